import type { Gesture } from './gesture.ts';
import { panning } from './panning.ts';
import { pointing } from './pointing.ts';

/** Nothing is pressed: the pointer shows what it is over. */
export const idle: Gesture = {
  name: 'idle',
  on(signal, hands) {
    if (signal.type === 'move') {
      if (signal.pointer.kind !== 'touch')
        hands.hover(hands.handleAt(signal.pointer.x, signal.pointer.y, signal.pointer.kind));
      return idle;
    }
    if (signal.type !== 'down') return idle;
    const { pointer } = signal;
    if (pointer.button === 1) return panning(pointer);
    if (pointer.button !== 0) return idle;
    const handle = hands.handleAt(pointer.x, pointer.y, pointer.kind);
    hands.hover(handle);
    return pointing(pointer, handle, handle ? undefined : hands.holdAt(pointer.x, pointer.y));
  },
};

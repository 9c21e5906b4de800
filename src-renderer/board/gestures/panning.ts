import type { Gesture, PointerNews } from './gesture.ts';
import { idle } from './idle.ts';
import { pinching } from './pinching.ts';

/** The paper goes along with the pointer. */
export function panning(last: PointerNews): Gesture {
  const self: Gesture = {
    name: 'panning',
    on(signal, hands) {
      switch (signal.type) {
        case 'down':
          return signal.pointer.id === last.id ? self : pinching(last, signal.pointer);
        case 'move':
          if (signal.pointer.id !== last.id) return self;
          hands.panBy(signal.pointer.x - last.x, signal.pointer.y - last.y);
          return panning(signal.pointer);
        case 'up':
          return signal.pointer.id === last.id ? idle : self;
        case 'lost':
          return signal.id === last.id ? idle : self;
        case 'escape':
          return idle;
        case 'keys':
          return self;
      }
    },
  };
  return self;
}

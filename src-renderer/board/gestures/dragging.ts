import type { Gesture, Grip, PointerNews } from './gesture.ts';
import { idle } from './idle.ts';

/** A point is in the hand. Escape and a pointer that is taken away give it back. */
export function dragging(start: PointerNews, grip: Grip, last: PointerNews = start): Gesture {
  const self: Gesture = {
    name: 'dragging',
    on(signal) {
      switch (signal.type) {
        case 'move': {
          const { pointer } = signal;
          if (pointer.id !== start.id) return self;
          grip.moveTo(pointer.x - start.x, pointer.y - start.y, pointer);
          return dragging(start, grip, pointer);
        }
        case 'keys':
          grip.moveTo(last.x - start.x, last.y - start.y, signal);
          return self;
        case 'up':
          if (signal.pointer.id !== start.id) return self;
          grip.putDown();
          return idle;
        case 'lost':
          if (signal.id !== start.id) return self;
          grip.giveBack();
          return idle;
        case 'escape':
          grip.giveBack();
          return idle;
        case 'down':
          // A second finger beside a drag is a slip of the hand, not a wish.
          return self;
      }
    },
  };
  return self;
}

import type { Handle } from '../handles.ts';
import { dragging } from './dragging.ts';
import type { Gesture, Hold, PointerNews } from './gesture.ts';
import { idle } from './idle.ts';
import { panning } from './panning.ts';
import { pinching } from './pinching.ts';

/** px that a press may tremble before it is a drag; a finger trembles more than a mouse. */
const TREMBLE = { mouse: 3, pen: 4, touch: 9 };

/** Pressed and not moved yet: it may become a choice, a drag of the point, a pull on what is under it, or a move of the paper. */
export function pointing(start: PointerNews, handle: Handle | undefined, hold?: Hold): Gesture {
  const self: Gesture = {
    name: 'pointing',
    on(signal, hands) {
      switch (signal.type) {
        case 'down':
          return signal.pointer.id === start.id ? self : pinching(start, signal.pointer);
        case 'move': {
          const { pointer } = signal;
          if (pointer.id !== start.id) return self;
          if (Math.hypot(pointer.x - start.x, pointer.y - start.y) <= TREMBLE[start.kind]) return self;
          if (!handle) {
            const pull = hold && hands.takeHold(hold);
            return pull ? dragging(start, pull).on(signal, hands) : panning(start).on(signal, hands);
          }
          hands.select(handle);
          const grip = hands.takeUp(handle);
          return grip ? dragging(start, grip).on(signal, hands) : idle;
        }
        case 'up':
          if (signal.pointer.id !== start.id) return self;
          hands.select(handle);
          return idle;
        case 'lost':
          return signal.id === start.id ? idle : self;
        case 'escape':
          return idle;
        case 'keys':
          return self;
      }
    },
  };
  return self;
}

import type { Gesture, PointerNews } from './gesture.ts';
import { idle } from './idle.ts';
import { panning } from './panning.ts';

/** px. Fingers closer than this say nothing about how much to zoom. */
const LEAST_APART = 12;

/** Two fingers: the paper follows their middle and their distance. */
export function pinching(first: PointerNews, second: PointerNews): Gesture {
  const self: Gesture = {
    name: 'pinching',
    on(signal, hands) {
      switch (signal.type) {
        case 'move': {
          const { pointer } = signal;
          if (pointer.id !== first.id && pointer.id !== second.id) return self;
          const next = pinching(
            pointer.id === first.id ? pointer : first,
            pointer.id === second.id ? pointer : second,
          );
          const other = pointer.id === first.id ? second : first;
          const before = pointer.id === first.id ? first : second;
          hands.panBy((pointer.x - before.x) / 2, (pointer.y - before.y) / 2);
          const was = Math.max(LEAST_APART, Math.hypot(before.x - other.x, before.y - other.y));
          const is = Math.max(LEAST_APART, Math.hypot(pointer.x - other.x, pointer.y - other.y));
          hands.zoomAt((pointer.x + other.x) / 2, (pointer.y + other.y) / 2, is / was);
          return next;
        }
        case 'up':
          if (signal.pointer.id === first.id) return panning(second);
          return signal.pointer.id === second.id ? panning(first) : self;
        case 'lost':
          if (signal.id === first.id) return panning(second);
          return signal.id === second.id ? panning(first) : self;
        case 'escape':
          return idle;
        case 'down':
        case 'keys':
          return self;
      }
    },
  };
  return self;
}

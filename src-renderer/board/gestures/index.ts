// What a hand does on the board, as small states that know nothing of the canvas.
export type { Gesture, Graspable, Grip, Hands, Hold, PointerNews, Signal } from './gesture.ts';
export { idle } from './idle.ts';

import type { Focus, KeyPress } from '../../controls/action.ts';
import type { AxlePull } from './axle-pull.svelte.ts';

/** mm of one press of an arrow while the axle is in the hand; with Shift, and without. */
const PULL = { small: 6.35, large: 25.4 };

/** What a press does to the hand that holds the axle; false if there is none, or the key is another's. */
export const pullsByKeys =
  (axlePull: AxlePull) =>
  (press: KeyPress, focus: Focus): boolean => {
    if (!axlePull.byKeys || focus !== 'board' || press.ctrlKey || press.metaKey || press.altKey) return false;
    if (press.key !== 'ArrowUp' && press.key !== 'ArrowDown') return false;
    axlePull.pull(
      axlePull.pulled.up + (press.key === 'ArrowUp' ? 1 : -1) * (press.shiftKey ? PULL.large : PULL.small),
    );
    return true;
  };

import type { SitFailure } from './sit.ts';

/** Why a car cannot sit so: one sentence without its full stop. */
export function sitFailureWords(failure: SitFailure, length: (mm: number) => string): string {
  switch (failure.kind) {
    case 'no-pose':
      return 'the axle’s links do not reach so far';
    case 'no-bump':
      return `the axle would stand ${length(failure.lacks)} past the end of its bump`;
    case 'no-droop':
      return `the axle would hang ${length(failure.lacks)} past the end of its droop`;
    case 'refused':
      return failure.refusal.reason;
  }
}

/** What to know of a car that sits elsewhere than it was drawn, and what does not go along. */
export const SIT_PLAINLY: readonly string[] = [
  'Points that were measured count as planned where they go: measure them again at this height.',
  'Boxes among what is in the way stay level; rails, tubes and all points turn with the frame.',
  'Photos, and drawings laid underneath, stay as they were, of the car as it stood then.',
  'The arc of a leaf, or of a spring with one fixed eye, begins anew from where it sits, and tyres are taken as round as before.',
];

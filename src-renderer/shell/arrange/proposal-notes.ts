import { HOLD_WORDS, type ProposeQuestion } from '../../../shared-math/propose/index.ts';
import type { ArrangedCar } from '../../document/shell.svelte.ts';

/** What a search was asked about: the car, its drawing as it was brought, and what of it stood still. */
export interface Asked {
  readonly car: ArrangedCar;
  readonly question: ProposeQuestion;
}

/** What a laid proposal remembers of how it came about. */
export function proposalNotes({ car, question }: Asked): string {
  const { held = [], seed = 1 } = question;
  const kept =
    held.length === 0
      ? 'Nothing of its steering was kept as drawn.'
      : `Kept as drawn: ${held.map((name) => HOLD_WORDS[name].toLowerCase()).join(', ')}.`;
  return [
    `Found by the board for “${car.document.name}” as it was drawn (search ${seed}). ${kept}`,
    'Its places are planned: check them on the car before anything is cut.',
  ].join(' ');
}

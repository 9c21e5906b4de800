import { heldWords, type ProposeQuestion, roomsWords } from '../../../shared-math/propose/index.ts';
import type { ArrangedCar } from '../../document/shell.svelte.ts';

/** What a search was asked about: the car, its drawing as it was brought, and what of it stood still. */
export interface Asked {
  readonly car: ArrangedCar;
  readonly question: ProposeQuestion;
}

/** What a laid proposal remembers of how it came about. */
export function proposalNotes({ car, question }: Asked): string {
  const { held = [], rooms = {}, style, seed = 1 } = question;
  return [
    `Found by the board for “${car.document.name}” as it was drawn (search number ${seed}). ${heldWords(held)}`,
    roomsWords(rooms, style),
    'Its places are planned: check them on the car before anything is cut.',
  ]
    .filter((words) => words !== '')
    .join(' ');
}

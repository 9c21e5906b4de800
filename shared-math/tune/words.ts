import { toDegrees } from '../units/index.ts';
import type { HoldState } from './holds.ts';
import type { TuneRefusal } from './tune.ts';

const HOLD_WORDS: Record<HoldState['name'], string> = {
  ratio: 'the overall ratio',
  lock: 'the lock',
  circle: 'the turning circle',
  tilt: 'the tilt of the balls',
  clearance: 'the clearances',
  reach: 'the reach of the links',
};

/** What is missing of a hold: "the lock by 2.1°", "the clearances by 3.0 mm". `length` words a length of mm. */
function missingWords({ name, slack }: HoldState, length: (mm: number) => string): string {
  const off = -slack;
  switch (name) {
    case 'ratio':
      return `${HOLD_WORDS[name]} by ${off.toFixed(1)}`;
    case 'lock':
    case 'tilt':
      return `${HOLD_WORDS[name]} by ${(toDegrees(off)).toFixed(1)}°`;
    case 'circle':
    case 'clearance':
      return `${HOLD_WORDS[name]} by ${length(off)}`;
    case 'reach':
      return HOLD_WORDS[name];
  }
}

/** Why a tune was not begun or came to nothing, in one plain sentence; `length` words a length of mm for its reader. */
export function tuneRefusalWords(
  refusal: TuneRefusal,
  length: (mm: number) => string = (mm) => `${Number(mm.toFixed(1))} mm`,
): string {
  switch (refusal.kind) {
    case 'nothing-free':
      return 'nothing is free to move';
    case 'bounds-crossed':
      return `the bounds of ${refusal.freedom} are crossed: from ${length(refusal.from)} to ${length(refusal.to)}`;
    case 'not-there':
      return `${refusal.freedom}: ${refusal.reason}`;
    case 'given-twice':
      return `${refusal.freedom} is given twice`;
    case 'no-pose':
      return 'the layout does not steer as drawn, so there is nothing to tune';
    case 'cannot-hold':
      return `not everything can hold within these bounds; at best misses ${refusal.missing.map((hold) => missingWords(hold, length)).join(' and ')}`;
  }
}

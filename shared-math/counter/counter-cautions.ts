import { ARMS, ASSISTANCE, type CautionNote } from '../words/index.ts';

// What is said with every answer at the counter, on the screen and on paper.

export const PRACTICE = 'common practice, no published source';

const DEFER: CautionNote = {
  words:
    'An answer at the counter has not seen the car. What is allowed is for the local code, the parts’ makers and a qualified engineer or certifier to say.',
  source: 'geometry is no approval',
};

const MEASURE_MATE: CautionNote = {
  words:
    'Measure the mating part before anything is ordered or cut: makers differ, and worn ends measure small.',
  source: PRACTICE,
};

export const SHAFT_CAUTIONS: readonly CautionNote[] = [
  {
    words:
      'Nothing that stands in the way is known here: engine, headers, rails, pedals. Hold a stick where the shaft will run, over full suspension travel and lock, before parts are ordered.',
    source: PRACTICE,
  },
  {
    words:
      'Every joint is fixed positively, as its maker says. Welding steering joints is for a qualified welder, where the local rule allows it at all.',
    source: PRACTICE,
  },
  MEASURE_MATE,
  DEFER,
];

export const END_CAUTIONS: readonly CautionNote[] = [
  MEASURE_MATE,
  {
    words:
      'A joint that goes on is not yet a joint that holds: engagement, notch or dimple, bolt and lock are the maker’s.',
    source: PRACTICE,
  },
  DEFER,
];

export const ARRANGEMENT_CAUTIONS: readonly CautionNote[] = [
  ...ARMS.notes.slice(0, 2),
  ...ASSISTANCE.notes.slice(0, 1),
  {
    words:
      'The four are laid on a plain car with the figures above. Places, arms and ratios are usual ones: a place to begin, to be measured on the car.',
    source: PRACTICE,
  },
  DEFER,
];

import type { Walk } from './walk.ts';

export const SIDE_OR_CROSS: Walk = {
  id: 'side-or-cross',
  title: 'Choose side or cross steer',
  about:
    'Four usual arrangements laid on this very car, held against one another. Two minutes, once the car is known.',
  steps: [
    {
      words:
        'With the car open, press A or choose “Choose an arrangement for this car” beside its name at the top.',
      picture: {
        file: 'choose-four',
        alt: 'Four arrangements side by side, each with its picture from above and its figures',
        of: 'page',
      },
    },
    {
      words:
        'Say what the board cannot see: the “Frame width at the axle”, whether “The engine” is in the way behind the axle, and how the car is “Driven”.',
    },
    {
      words:
        'Read down the columns: bump steer, parking at the rim, turning circle, what comes too close. Below stands what speaks “For and against” each of them.',
      picture: {
        file: 'choose-reasons',
        alt: 'What speaks for and against each arrangement on this car',
        of: 'page',
      },
    },
    {
      words:
        'Take one with “Add as a new variant”. The others stay as they were, and “Compare” in the right column holds any two against each other later.',
    },
  ],
};

import type { Walk } from './walk.ts';

export const MEASURE: Walk = {
  id: 'measure',
  title: 'Measure a car',
  about:
    'From a car on the floor to a drawing that knows how good it is. Tape, plumb bob, angle finder, half an hour.',
  steps: [
    {
      words:
        'Stand the car on its tyres on level ground, wheels straight ahead, with its usual load. Choose “Start with a plain car”: the board opens at “Measure”, on the page “By tape”.',
    },
    {
      words:
        'Each row says what to tape, and the drawing shows it. Type the figure as you read it, as 13 1/4 or 337 mm; Enter goes on to the next row. Leave blank what you cannot reach.',
      picture: {
        file: 'measure-list',
        alt: 'The list of what to tape, and beside it the dimension of the row at hand on the drawing',
        of: 'page',
      },
    },
    {
      words:
        'Go on as far as you can. At the top stands how many points are measured, the “Worst bump steer” with its doubt, and what makes most of that doubt: measure that next.',
      picture: {
        file: 'measure-headline',
        alt: 'How many points are measured and the worst bump steer with its doubt, above the list',
        of: 'column',
      },
    },
    {
      words:
        'A figure that does not go with the others is named, with the slip that would explain it: a foot misread, the wrong side of the axle. One button puts it right, or you say that it is as typed. To check one more length, choose “Measure between two points”.',
    },
    {
      words:
        'Rather write on paper? Under “Sheet” the “Measuring sheet” has the same rows with a picture and a blank for each.',
    },
  ],
};

import type { Walk } from './walk.ts';

export const ROUTE_THE_SHAFT: Walk = {
  id: 'route-the-shaft',
  title: 'Route the shaft',
  about: 'From the column’s end to the box: joints, angles, clocking, supports, ends, and what to cut.',
  steps: [
    {
      words:
        'Open “Shaft”. Tape where the column ends and how it slopes, and type it under “Column”; the box’s input below it.',
    },
    {
      words:
        'Choose “Suggest routes”. The board looks for ways with one, two and three joints that keep clear of rails, engine and headers, and says how hard each joint works.',
      picture: {
        file: 'shaft-routes',
        alt: 'Suggested routes with one, two and three joints, each with its angles and parts',
        of: 'column',
      },
    },
    {
      words:
        'Take one with “Use this route”, and drag its joints where you want them. Angles are those in space: they are more than any one view shows.',
    },
    {
      words:
        'Choose “Set the best clocking”: it turns the yokes so that the joints undo one another’s unevenness. The curve below the board goes flat.',
      picture: {
        file: 'shaft-clocked',
        alt: 'The shaft on the board, and the curve of the box’s input against the handwheel after clocking',
        of: 'page',
      },
    },
    {
      words:
        'On “Ends” say what each end is, and the board says which go together. “Make” then has cut lengths, the steps in their order, and the parts to buy.',
      picture: { file: 'shaft-make', alt: 'Cut lengths, steps and parts of the shaft', of: 'column' },
    },
  ],
};

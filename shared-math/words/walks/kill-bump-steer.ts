import type { Walk } from './walk.ts';

export const KILL_BUMP_STEER: Walk = {
  id: 'kill-bump-steer',
  title: 'Kill bump steer',
  about: 'From a car that darts over bumps to one that does not, by moving the box as little as it takes.',
  steps: [
    {
      words:
        'Look at the figure under “Worst bump steer” and at the curve “Steer of the wheels”: it should lie flat. The board draws in red where the link wants to go and in ink where the axle goes.',
      picture: {
        file: 'bump-before',
        alt: 'The front end with the box too low: a steep curve of steer, and the gap between the two arcs',
        of: 'page',
      },
    },
    {
      words:
        'Open “Verdict”. What must be fixed stands first, each with the move that helps most and what is left after it. Choose a finding and its part is shown on the board.',
      picture: {
        file: 'bump-verdict',
        alt: 'The verdict: the finding of bump steer, its limit, and a button that makes the move',
        of: 'column',
      },
    },
    {
      words:
        'To see every place that the ball could have, press M or choose “Where can the ball go?”. Light ground is good; hatched ground hits something. Along the ridge bump steer is least.',
      picture: {
        file: 'bump-map',
        alt: 'The map of bump steer over places for the pitman ball, its ridge and the best spot',
        of: 'page',
      },
    },
    {
      words:
        'Click a place, or let the board look with “Tune”: say what may move and how far, and what must hold. It shows what it would move and what that costs before anything is moved.',
    },
    {
      words:
        'Make the move with its button in “Verdict”. The curve drops, and Undo takes it back. Heave the axle with the slider “Heave” and watch: the wheels stand still.',
      picture: {
        file: 'bump-after',
        alt: 'The same front end with the box raised: the curve of steer lies flat',
        of: 'page',
      },
    },
  ],
};

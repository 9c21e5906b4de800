import type { Walk } from './walk.ts';

export const TURN_AND_STOPS: Walk = {
  id: 'turn-and-stops',
  title: 'Turn and stops',
  about: 'How far the car turns, what ends the turn, and stops that end it before anything breaks.',
  steps: [
    {
      words:
        'Open “Turn”. Turn the slider “Handwheel” from end to end: wheels, arms and links follow, in all three views.',
      picture: {
        file: 'turn-lock',
        alt: 'The car at full lock, with the curves of both wheels, the ratio and the Ackermann error',
        of: 'page',
      },
    },
    {
      words:
        'Read “Turn ends at”. A stop at the axle is what you want there. The box’s own end, a link’s reach or a dead centre is what you do not.',
    },
    {
      words:
        '“Circle between kerbs” is what the car needs to turn around in. “Drag link to pitman arm” should stay well away from a straight line all through the turn.',
      picture: {
        file: 'turn-figures',
        alt: 'The figures of the turn: turns lock to lock, what ends it, the circle, the angles of the drag link',
        of: 'strip',
      },
    },
    {
      words:
        'On the page “Car”, under Steering, set “Stops at the axle”. Try degrees until the circle is small enough and “Verdict” finds nothing too near at full lock.',
    },
  ],
};

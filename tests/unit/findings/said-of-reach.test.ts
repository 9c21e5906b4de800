import { describe, expect, test } from 'vitest';
import { box, car, heard, said, withLayout, withParts, withTurn } from '../../support/judged-car.ts';
import { LATERALS } from '../../support/layouts.ts';

// The whole of each finding in both units, with figures put in where a rule takes them ready made: which way round its
// words, parts and remedies go, and what lies at a limit and on either side of it.

const { axle: AXLE, car: CAR } = car().layout;
const carOf = (over: object) => ({ car: { ...CAR, ...over } });
const barred = () => car({ lateral: LATERALS.bar });
const raised = (left: number, right: number) => ({
  axle: {
    ...AXLE,
    left: { ...AXLE.left, wheelCentre: [0, 710, left] },
    right: { ...AXLE.right, wheelCentre: [0, -710, right] },
  },
});
const missed = (dragLink: number, tieRod: number, located: number) => ({
  extremes: {
    outOfReach: dragLink + tieRod + located,
    poses: 1271,
    missedBy: { 'drag-link': dragLink, 'tie-rod': tieRod, axle: located },
  },
});
const heaveOf = (...status: readonly number[]) => ({ heave: { status, count: status.length } });

const SAID = [
  said('the tyres stand on the ground', 'tyre-and-ground', () => car(), []),
  said(
    'a sixteenth off is not told',
    'tyre-and-ground',
    () => withLayout(car(), carOf({ tyreRadius: 331.5875 })),
    [],
  ),
  said(
    'a larger tyre reaches into the ground',
    'tyre-and-ground',
    () => withLayout(car(), carOf({ tyreRadius: 381 })),
    [
      'stop axle.left.wheelCentre | The tyres reach 2 in into the ground: wheel centre 13 in up, tyre radius 15 in | limit 1/16 in | If the height is right, set the tyre radius to 13 in; if the radius is right, type it again: the axle goes to it. | geometry: every height is measured from the ground that the tyres stand on | {remedy:{kind:set,path:car.tyreRadius,value:330,words:Set the tyre radius to the wheel centre’s height}}',
    ],
    {
      mm: [
        'The tyres reach 51.0 mm into the ground: wheel centre 330.0 mm up, tyre radius 381.0 mm | limit 1.59 mm | If the height is right, set the tyre radius to 330.0 mm; if the radius is right, type it again: the axle goes to it.',
      ],
    },
  ),
  said(
    'a smaller tyre hangs above it',
    'tyre-and-ground',
    () => withLayout(car(), carOf({ tyreRadius: 317.3 })),
    [
      'stop axle.left.wheelCentre | The tyres hang 1/2 in above the ground: wheel centre 13 in up, tyre radius 12 1/2 in | limit 1/16 in | If the height is right, set the tyre radius to 13 in; if the radius is right, type it again: the axle goes to it. | geometry: every height is measured from the ground that the tyres stand on | {remedy:{kind:set,path:car.tyreRadius,value:330,words:Set the tyre radius to the wheel centre’s height}}',
    ],
    {
      mm: [
        'The tyres hang 12.7 mm above the ground: wheel centre 330.0 mm up, tyre radius 317.3 mm | limit 1.59 mm | If the height is right, set the tyre radius to 330.0 mm; if the radius is right, type it again: the axle goes to it.',
      ],
    },
  ),
  said(
    'one tyre off',
    'tyre-and-ground',
    () => withLayout(car(), raised(330, 320)),
    [
      'stop axle.right.wheelCentre | The right tyre reaches 3/8 in into the ground: wheel centre 12 5/8 in up, tyre radius 13 in | limit 1/16 in | Measure both wheel centres again: the two tyres are of one radius. | geometry: every height is measured from the ground that the tyres stand on',
    ],
    {
      mm: [
        'The right tyre reaches 10.0 mm into the ground: wheel centre 320.0 mm up, tyre radius 330.0 mm | limit 1.59 mm | Measure both wheel centres again: the two tyres are of one radius.',
      ],
    },
  ),
  said(
    'two tyres off, each its own way',
    'tyre-and-ground',
    () => withLayout(car(), raised(340, 320)),
    [
      'stop axle.left.wheelCentre | The left tyre hangs 3/8 in above the ground: wheel centre 13 3/8 in up, tyre radius 13 in | limit 1/16 in | Measure both wheel centres again: the two tyres are of one radius. | geometry: every height is measured from the ground that the tyres stand on',
      'stop axle.right.wheelCentre | The right tyre reaches 3/8 in into the ground: wheel centre 12 5/8 in up, tyre radius 13 in | limit 1/16 in | Measure both wheel centres again: the two tyres are of one radius. | geometry: every height is measured from the ground that the tyres stand on',
    ],
    {
      mm: [
        'The left tyre hangs 10.0 mm above the ground: wheel centre 340.0 mm up, tyre radius 330.0 mm | limit 1.59 mm | Measure both wheel centres again: the two tyres are of one radius.',
        'The right tyre reaches 10.0 mm into the ground: wheel centre 320.0 mm up, tyre radius 330.0 mm | limit 1.59 mm | Measure both wheel centres again: the two tyres are of one radius.',
      ],
    },
  ),
  said(
    'two tyres off, not quite alike',
    'tyre-and-ground',
    () => withLayout(car(), raised(340, 340.06)),
    [
      'stop axle.left.wheelCentre | The left tyre hangs 3/8 in above the ground: wheel centre 13 3/8 in up, tyre radius 13 in | limit 1/16 in | Measure both wheel centres again: the two tyres are of one radius. | geometry: every height is measured from the ground that the tyres stand on',
      'stop axle.right.wheelCentre | The right tyre hangs 3/8 in above the ground: wheel centre 13 3/8 in up, tyre radius 13 in | limit 1/16 in | Measure both wheel centres again: the two tyres are of one radius. | geometry: every height is measured from the ground that the tyres stand on',
    ],
    {
      mm: [
        'The left tyre hangs 10.0 mm above the ground: wheel centre 340.0 mm up, tyre radius 330.0 mm | limit 1.59 mm | Measure both wheel centres again: the two tyres are of one radius.',
        'The right tyre hangs 10.1 mm above the ground: wheel centre 340.1 mm up, tyre radius 330.0 mm | limit 1.59 mm | Measure both wheel centres again: the two tyres are of one radius.',
      ],
    },
  ),
  said(
    'two tyres off alike',
    'tyre-and-ground',
    () => withLayout(car(), raised(340, 340.04)),
    [
      'stop axle.left.wheelCentre | The tyres hang 3/8 in above the ground: wheel centre 13 3/8 in up, tyre radius 13 in | limit 1/16 in | If the height is right, set the tyre radius to 13 3/8 in; if the radius is right, type it again: the axle goes to it. | geometry: every height is measured from the ground that the tyres stand on | {remedy:{kind:set,path:car.tyreRadius,value:340,words:Set the tyre radius to the wheel centre’s height}}',
    ],
    {
      mm: [
        'The tyres hang 10.0 mm above the ground: wheel centre 340.0 mm up, tyre radius 330.0 mm | limit 1.59 mm | If the height is right, set the tyre radius to 340.0 mm; if the radius is right, type it again: the axle goes to it.',
      ],
    },
  ),
  said('all is reached', 'out-of-reach', () => car(), [
    'info steering.dragLinkBall | The linkage reaches everywhere in travel and turn |  |  | geometry of the layout',
  ]),
  said('the axle is free', 'out-of-reach', () => withTurn(car(), { status: 'no-pose' }), [
    'stop axle.left.wheelCentre | The links leave the axle free to move |  | Spread the links: no two on one line, no ball on the axle’s own line, the bar away from the wishbone’s ball. | geometry of the layout',
  ]),
  said('the axle is free with a bar', 'out-of-reach', () => withTurn(barred(), { status: 'no-pose' }), [
    'stop lateral.axle | The links leave the axle free to move |  | Spread the links: no two on one line, no ball on the axle’s own line, the bar away from the wishbone’s ball. | geometry of the layout',
  ]),
  said('it does not close', 'out-of-reach', () => withTurn(car(), { status: 'out-of-reach' }), [
    'stop steering.dragLinkBall | The linkage does not close at ride height |  | Check the lengths of drag link and tie rod. | geometry of the layout',
  ]),
  said(
    'the drag link fails in one pose of the turn',
    'out-of-reach',
    () => withParts(car(), missed(1, 0, 0)),
    [
      'stop steering.dragLinkBall | The drag link does not reach: 1 of 1271 poses of travel and turn is out of reach |  | Set stops at the axle, or shorten the pitman arm. | geometry of the layout',
    ],
  ),
  said('the drag link fails in the turn', 'out-of-reach', () => withParts(car(), missed(40, 0, 0)), [
    'stop steering.dragLinkBall | The drag link does not reach: 40 of 1271 poses of travel and turn are out of reach |  | Set stops at the axle, or shorten the pitman arm. | geometry of the layout',
  ]),
  said('the drag link fails, the tie rod too', 'out-of-reach', () => withParts(car(), missed(40, 12, 0)), [
    'stop steering.dragLinkBall | The drag link does not reach: 52 of 1271 poses of travel and turn are out of reach, 12 of them by the tie rod |  | Set stops at the axle, or shorten the pitman arm. | geometry of the layout',
  ]),
  said(
    'the drag link fails as often as the tie rod: it is named',
    'out-of-reach',
    () => withParts(car(), missed(12, 12, 0)),
    [
      'stop steering.dragLinkBall | The drag link does not reach: 24 of 1271 poses of travel and turn are out of reach, 12 of them by the tie rod |  | Set stops at the axle, or shorten the pitman arm. | geometry of the layout',
    ],
  ),
  said('the tie rod fails, the drag link too', 'out-of-reach', () => withParts(car(), missed(3, 12, 0)), [
    'stop axle.left.tieRodBall | The tie rod does not reach: 15 of 1271 poses of travel and turn are out of reach, 3 of them by the drag link |  | Set stops at the axle, or bring the tie rod balls out so that the arms stand squarer to the rod. | geometry of the layout',
  ]),
  said('the tie rod fails', 'out-of-reach', () => withParts(car(), missed(0, 12, 0)), [
    'stop axle.left.tieRodBall | The tie rod does not reach: 12 of 1271 poses of travel and turn are out of reach |  | Set stops at the axle, or bring the tie rod balls out so that the arms stand squarer to the rod. | geometry of the layout',
  ]),
  said('the axle finds no place', 'out-of-reach', () => withParts(car(), missed(1, 2, 30)), [
    'stop location.left.framePivot | What locates the axle leaves it no place: 33 of 1271 poses of travel and turn are out of reach |  | Make its rods or bars longer, or the travel less. | geometry of the layout',
  ]),
  said(
    'the drag link fails straight ahead',
    'out-of-reach',
    () => withParts(car(), { ...missed(0, 0, 0), ...heaveOf(0, 1, 1) }),
    [
      'stop steering.dragLinkBall | The drag link does not reach: 2 of 3 poses of travel are out of reach |  | Bring pitman ball and steering arm ball to where their arms stand square to the link: there it reaches furthest. | geometry of the layout',
    ],
  ),
  said(
    'the drag link fails straight ahead, no turn',
    'out-of-reach',
    () => withParts(car(), { extremes: undefined, ...heaveOf(1, 0, 0) }),
    [
      'stop steering.dragLinkBall | The drag link does not reach: 1 of 3 poses of travel is out of reach |  | Bring pitman ball and steering arm ball to where their arms stand square to the link: there it reaches furthest. | geometry of the layout',
    ],
  ),
  said(
    'a bar with both ends on one side',
    'out-of-reach',
    () => car({ lateral: { kind: 'bar', axle: [-72, -520, 352], frame: [-72, -460, 352] } }),
    [
      'stop lateral.frame | The lateral bar does not let the axle through its travel: 246 of 1517 poses of travel and turn are out of reach |  | Both its ends are on one side of the car: move its frame end to the other side, so that it is long and draws the axle sideways less. | geometry of the layout',
    ],
  ),
  said(
    'a bar that is short',
    'out-of-reach',
    () => car({ lateral: { kind: 'bar', axle: [-72, -30, 352], frame: [-72, 35, 362] } }),
    [
      'stop lateral.frame | The lateral bar does not let the axle through its travel: 205 of 1517 poses of travel and turn are out of reach |  | Make it longer, and level at ride height: a short or steep bar draws the axle sideways. | geometry of the layout',
    ],
  ),
  said('a bar that fails in roll alone', 'out-of-reach', () => withParts(barred(), missed(40, 0, 0)), [
    'stop lateral.frame | The lateral bar does not let the axle through its travel: 40 of 1271 poses of travel and turn are out of reach |  | Make it longer, or set stops at the axle. | geometry of the layout',
  ]),
  said(
    'a bar is not at fault where the drag link fails without it',
    'out-of-reach',
    () =>
      car({
        lateral: LATERALS.bar,
        steering: box({ sectorCentre: [-160, 500, 400], pitmanBall: [-60, 490, 395] }),
      }),
    [
      'stop steering.dragLinkBall | The drag link does not reach: 445 of 1517 poses of travel and turn are out of reach |  | Bring pitman ball and steering arm ball to where their arms stand square to the link: there it reaches furthest. | geometry of the layout',
    ],
  ),
  said(
    'one tyre just off, the other just not',
    'tyre-and-ground',
    () => withLayout(car(), raised(331.6, 331.58)),
    [
      'stop axle.left.wheelCentre | The left tyre hangs 0.0630 in above the ground: wheel centre 13 1/16 in up, tyre radius 13 in | limit 1/16 in | Measure both wheel centres again: the two tyres are of one radius. | geometry: every height is measured from the ground that the tyres stand on',
    ],
    {
      mm: [
        'The left tyre hangs 1.60 mm above the ground: wheel centre 331.6 mm up, tyre radius 330.0 mm | limit 1.59 mm | Measure both wheel centres again: the two tyres are of one radius.',
      ],
    },
  ),
  said(
    'a bar that ends in the middle of the car',
    'out-of-reach',
    () => car({ lateral: { kind: 'bar', axle: [-72, -60, 352], frame: [-72, 0, 362] } }),
    [
      'stop lateral.frame | The lateral bar does not let the axle through its travel: 246 of 1517 poses of travel and turn are out of reach |  | Make it longer, and level at ride height: a short or steep bar draws the axle sideways. | geometry of the layout',
    ],
  ),
];

describe('what is said of reach and ground', () => {
  test.each(SAID)('$label', (one) => {
    expect(heard(one)).toEqual({ inches: one.inches, mm: one.mm });
  });
});

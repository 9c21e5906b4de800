import { describe, expect, test } from 'vitest';
import { car, DEG, heard, said, withParts } from '../../support/judged-car.ts';

// The whole of each finding in both units, with figures put in where a rule takes them ready made: which way round its
// words, parts and remedies go, and what lies at a limit and on either side of it.

const PAIR = {
  a: 'drag-link',
  b: 'tyre-left',
  nameOfA: 'drag link',
  nameOfB: 'left tyre',
  limit: 'tyre',
  distance: 20,
  at: { heave: 76.2, roll: 0, handwheel: 0 },
  onA: [1, 2, 3],
  onB: [4, 5, 6],
  assumed: false,
  part: 'steering.dragLinkBall',
};
const pairs = (...list: readonly object[]) =>
  withParts(car(), {
    clearances: {
      pairs: list.map((one) => ({ ...PAIR, ...one })),
      within: 100,
      judged: 9,
      poses: 1271,
      outOfReach: 0,
    },
  });
const HEADER = {
  a: 'obstacle-2',
  b: 'drag-link',
  nameOfA: 'header tube',
  nameOfB: 'drag link',
  limit: 'moving',
};
const BESIDE = { a: 'tie-rod', nameOfA: 'tie rod', limit: 'moving' };

const SAID = [
  said('not looked for', 'clearance', () => car(), []),
  said(
    'no pose in reach',
    'clearance',
    () => withParts(car(), { clearances: { pairs: [], within: 100, judged: 9, poses: 0, outOfReach: 1271 } }),
    [],
  ),
  said(
    'nothing near',
    'clearance',
    () => pairs(),
    [
      'info steering.dragLinkBall | Nothing that moves comes within 3 15/16 in of anything | limit 1/2 in |  | common practice, no published source',
    ],
    { mm: ['Nothing that moves comes within 100.0 mm of anything | limit 12.7 mm | '] },
  ),
  said(
    'all far enough: the nearest',
    'clearance',
    () => pairs({ distance: 25.4 }, { ...HEADER, distance: 40 }),
    [
      'info steering.dragLinkBall | Nothing comes too close: the drag link clears the left tyre by 1 in | limit 1 in |  | common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:25.4}}',
    ],
    { mm: ['Nothing comes too close: the drag link clears the left tyre by 25.4 mm | limit 25.4 mm | '] },
  ),
  said(
    'all far enough: the nearest is no tyre',
    'clearance',
    () => pairs({ ...HEADER, distance: 12.7 }, { distance: 40 }),
    [
      'info steering.dragLinkBall | Nothing comes too close: the header tube clears the drag link by 1/2 in | limit 1/2 in |  | common practice, no published source | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[obstacle-2,drag-link],words:header tube to drag link,distance:12.7}}',
    ],
    { mm: ['Nothing comes too close: the header tube clears the drag link by 12.7 mm | limit 12.7 mm | '] },
  ),
  said(
    'too near to a tyre, in bump',
    'clearance',
    () => pairs({ distance: 20 }),
    [
      'attention steering.dragLinkBall | Drag link comes within 13/16 in of the left tyre at 3 in of bump | limit 1 in | Move one of the two, or set stops that end the turn or the travel sooner. | common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:20}}',
    ],
    {
      mm: [
        'Drag link comes within 20.0 mm of the left tyre at 76.2 mm of bump | limit 25.4 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
      ],
    },
  ),
  said(
    'in droop, leaning, turned to the left',
    'clearance',
    () => pairs({ distance: 10, at: { heave: -50.8, roll: -2 * DEG, handwheel: 2.4 * Math.PI } }),
    [
      'attention steering.dragLinkBall | Drag link comes within 3/8 in of the left tyre at 2 in of droop, 2.0° of roll, the handwheel 1.2 turns to the left | limit 1 in | Move one of the two, or set stops that end the turn or the travel sooner. | common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies | {at:{heave:-50.8,roll:-0.0349,handwheel:7.5398},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:10}}',
    ],
    {
      mm: [
        'Drag link comes within 10.0 mm of the left tyre at 50.8 mm of droop, 2.0° of roll, the handwheel 1.2 turns to the left | limit 25.4 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
      ],
    },
  ),
  said(
    'at ride height, turned to the right',
    'clearance',
    () => pairs({ distance: 10, at: { heave: 0, roll: 0, handwheel: -0.2 * Math.PI } }),
    [
      'attention steering.dragLinkBall | Drag link comes within 3/8 in of the left tyre at ride height, the handwheel 0.1 turns to the right | limit 1 in | Move one of the two, or set stops that end the turn or the travel sooner. | common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies | {at:{heave:0,roll:0,handwheel:-0.6283},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:10}}',
    ],
    {
      mm: [
        'Drag link comes within 10.0 mm of the left tyre at ride height, the handwheel 0.1 turns to the right | limit 25.4 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
      ],
    },
  ),
  said(
    'hardly turned is not told',
    'clearance',
    () => pairs({ distance: 10, at: { heave: 0.04, roll: 1e-7, handwheel: 0.09 * Math.PI } }),
    [
      'attention steering.dragLinkBall | Drag link comes within 3/8 in of the left tyre at ride height | limit 1 in | Move one of the two, or set stops that end the turn or the travel sooner. | common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies | {at:{heave:0.04,roll:0,handwheel:0.2827},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:10}}',
    ],
    {
      mm: [
        'Drag link comes within 10.0 mm of the left tyre at ride height | limit 25.4 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
      ],
    },
  ),
  said(
    'all but touches',
    'clearance',
    () => pairs({ distance: 0.04 }),
    [
      'attention steering.dragLinkBall | Drag link all but touches the left tyre at 3 in of bump | limit 1 in | Move one of the two, or set stops that end the turn or the travel sooner. | common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:0.04}}',
    ],
    {
      mm: [
        'Drag link all but touches the left tyre at 76.2 mm of bump | limit 25.4 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
      ],
    },
  ),
  said(
    'a twentieth of a millimetre is told',
    'clearance',
    () => pairs({ distance: 0.06 }),
    [
      'attention steering.dragLinkBall | Drag link comes within 0.002 in of the left tyre at 3 in of bump | limit 1 in | Move one of the two, or set stops that end the turn or the travel sooner. | common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:0.06}}',
    ],
    {
      mm: [
        'Drag link comes within 0.1 mm of the left tyre at 76.2 mm of bump | limit 25.4 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
      ],
    },
  ),
  said(
    'hits',
    'clearance',
    () => pairs({ distance: -3 }),
    [
      'stop steering.dragLinkBall | Drag link hits the left tyre at 3 in of bump | limit 1 in | Move one of the two, or set stops that end the turn or the travel sooner. | common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:-3}}',
    ],
    {
      mm: [
        'Drag link hits the left tyre at 76.2 mm of bump | limit 25.4 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
      ],
    },
  ),
  said(
    'touches',
    'clearance',
    () => pairs({ distance: 0 }),
    [
      'stop steering.dragLinkBall | Drag link hits the left tyre at 3 in of bump | limit 1 in | Move one of the two, or set stops that end the turn or the travel sooner. | common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:0}}',
    ],
    {
      mm: [
        'Drag link hits the left tyre at 76.2 mm of bump | limit 25.4 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
      ],
    },
  ),
  said(
    'would hit, as such parts are usually made',
    'clearance',
    () => pairs({ distance: -3, assumed: true }),
    [
      'attention steering.dragLinkBall | Drag link hits the left tyre at 3 in of bump | limit 1 in | Measure it on the car: one of the two is drawn as such parts are usually made. | common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:-3}}',
    ],
    {
      mm: [
        'Drag link hits the left tyre at 76.2 mm of bump | limit 25.4 mm | Measure it on the car: one of the two is drawn as such parts are usually made.',
      ],
    },
  ),
  said(
    'an obstacle is what is shown',
    'clearance',
    () =>
      pairs({
        a: 'drag-link',
        b: 'obstacle-2',
        nameOfA: 'drag link',
        nameOfB: 'header tube',
        limit: 'moving',
        distance: 8,
        part: 'steering.dragLinkBall',
      }),
    [
      'attention obstacles.2 | Drag link comes within 5/16 in of the header tube at 3 in of bump | limit 1/2 in | Move one of the two, or set stops that end the turn or the travel sooner. | common practice, no published source | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,obstacle-2],words:drag link to header tube,distance:8}}',
    ],
    {
      mm: [
        'Drag link comes within 8.0 mm of the header tube at 76.2 mm of bump | limit 12.7 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
      ],
    },
  ),
  said(
    'both sides alike are said once; the rest each',
    'clearance',
    () =>
      pairs(
        { distance: 8 },
        { a: 'drag-link', b: 'tyre-right', nameOfB: 'right tyre', distance: 9 },
        { ...BESIDE, b: 'axle', nameOfB: 'axle beam', distance: 11 },
        { ...BESIDE, b: 'wishbone', nameOfB: 'wishbone', distance: 13 },
      ),
    [
      'attention steering.dragLinkBall | Drag link comes within 5/16 in of the left tyre at 3 in of bump | limit 1 in | Move one of the two, or set stops that end the turn or the travel sooner. | common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:8}}',
      'attention steering.dragLinkBall | Tie rod comes within 7/16 in of the axle beam at 3 in of bump | limit 1/2 in | Move one of the two, or set stops that end the turn or the travel sooner. | common practice, no published source | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[tie-rod,axle],words:tie rod to axle beam,distance:11}}',
    ],
    {
      mm: [
        'Drag link comes within 8.0 mm of the left tyre at 76.2 mm of bump | limit 25.4 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
        'Tie rod comes within 11.0 mm of the axle beam at 76.2 mm of bump | limit 12.7 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
      ],
    },
  ),
  said(
    'a shop’s own gaps',
    'clearance',
    () => pairs({ distance: 30 }, { ...HEADER, b: 'tie-rod', nameOfB: 'tie rod', distance: 14 }),
    [
      'attention steering.dragLinkBall | Drag link comes within 1 3/16 in of the left tyre at 3 in of bump | limit 1 1/4 in | Move one of the two, or set stops that end the turn or the travel sooner. | this shop’s own limit | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[drag-link,tyre-left],words:drag link to left tyre,distance:30}}',
      'attention steering.dragLinkBall | Header tube comes within 9/16 in of the tie rod at 3 in of bump | limit 3/4 in | Move one of the two, or set stops that end the turn or the travel sooner. | this shop’s own limit | {at:{heave:76.2,roll:0,handwheel:0},gap:[[1,2,3],[4,5,6]],between:{parts:[obstacle-2,tie-rod],words:header tube to tie rod,distance:14}}',
    ],
    {
      mm: [
        'Drag link comes within 30.0 mm of the left tyre at 76.2 mm of bump | limit 31.75 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
        'Header tube comes within 14.0 mm of the tie rod at 76.2 mm of bump | limit 19.05 mm | Move one of the two, or set stops that end the turn or the travel sooner.',
      ],
      shop: { clearanceTyre: 31.75, clearanceMoving: 19.05 },
    },
  ),
];

describe('what is said of clearances', () => {
  test.each(SAID)('$label', (one) => {
    expect(heard(one)).toEqual({ inches: one.inches, mm: one.mm });
  });
});

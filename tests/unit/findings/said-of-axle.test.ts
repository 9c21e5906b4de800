import { describe, expect, test } from 'vitest';
import { car, DEG, half, heard, said, withLayout, withParts } from '../../support/judged-car.ts';
import { LOCATIONS, PLAIN_HALF } from '../../support/layouts.ts';

// The whole of each finding in both units, with figures put in where a rule takes them ready made: which way round its
// words, parts and remedies go, and what lies at a limit and on either side of it.

type Row = readonly [at: number, value: number, status?: number];
const sweep = (along: 'heave' | 'roll', rows: readonly Row[]) => ({
  along,
  count: rows.length,
  at: rows.map(([at]) => at),
  status: rows.map(([, , status = 0]) => status),
  bind: rows.map(([, bind]) => bind),
  leftCaster: rows.map(([, value]) => value * DEG),
});
const binds = (heave: readonly Row[], roll: readonly Row[]) => ({
  heave: sweep('heave', heave),
  roll: sweep('roll', roll),
});
/** Of the plain car: 14 mm back over 130 mm up, 6.15 degrees. */
const DRAWN = Math.atan2(14, 130) / DEG;
const TUBE = { axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' } };
const RIGHT = {
  ...PLAIN_HALF,
  kingpinTop: [-7, -631, 395],
  kingpinBottom: [7, -649, 265],
  wheelCentre: [0, -710, 330],
  tieRodBall: [-150, -606, 292],
};
const sides = (left: object, right: object) => ({
  axle: { beam: 'i-beam', left: { ...PLAIN_HALF, ...left }, right: { ...RIGHT, ...right } },
});

const SAID = [
  said(
    'nothing binds',
    'bind-in-roll',
    () =>
      withParts(
        car(),
        binds(
          [
            [-75, 0],
            [75, 0.02],
          ],
          [
            [-0.05, 0.01],
            [0.05, 0.03],
          ],
        ),
      ),
    [
      'info location.left.framePivot | The links do not bind anywhere in travel and roll | limit 0.039 in |  | common practice, no published source',
    ],
    { mm: ['The links do not bind anywhere in travel and roll | limit 1 mm | '] },
  ),
  said(
    'binds a little, in heave',
    'bind-in-roll',
    () =>
      withParts(
        car(),
        binds(
          [
            [-75, 0.9],
            [75, 0.5],
          ],
          [
            [-0.05, 0.01],
            [0.05, 0.03],
          ],
        ),
      ),
    [
      'info location.left.framePivot | The links bind by 0.035 in in 3° of roll or full travel | limit 0.039 in |  | common practice, no published source | {at:{heave:-75,roll:0,handwheel:0}}',
    ],
    { mm: ['The links bind by 0.9 mm in 3° of roll or full travel | limit 1 mm | '] },
  ),
  said(
    'binds as much as a shop allows',
    'bind-in-roll',
    () =>
      withParts(
        car(),
        binds(
          [
            [-75, 1.5875],
            [75, 0.5],
          ],
          [],
        ),
      ),
    [
      'info location.left.framePivot | The links bind by 1/16 in in 3° of roll or full travel | limit 1/16 in |  | this shop’s own limit | {at:{heave:-75,roll:0,handwheel:0}}',
    ],
    {
      mm: ['The links bind by 1.6 mm in 3° of roll or full travel | limit 1.59 mm | '],
      shop: { bind: 1.5875 },
    },
  ),
  said(
    'binds five times as much',
    'bind-in-roll',
    () =>
      withParts(
        car(),
        binds(
          [
            [-75, 7.9375],
            [75, 0.5],
          ],
          [],
        ),
      ),
    [
      'attention location.left.framePivot | The links bind by 5/16 in in 3° of roll or full travel | limit 1/16 in | Make the bars alike and parallel, or bush their ends softer. | this shop’s own limit | {at:{heave:-75,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'The links bind by 7.9 mm in 3° of roll or full travel | limit 1.59 mm | Make the bars alike and parallel, or bush their ends softer.',
      ],
      shop: { bind: 1.5875 },
    },
  ),
  said(
    'binds too much, in roll, bars',
    'bind-in-roll',
    () =>
      withParts(
        car({ ...TUBE, location: LOCATIONS['four-bar'] }),
        binds(
          [
            [-75, 1],
            [75, 0.5],
          ],
          [
            [-0.05, 4.9],
            [0.05, 4.9],
          ],
        ),
      ),
    [
      'attention location.left.upper.frame | The links bind by 3/16 in in 3° of roll or full travel | limit 0.039 in | Make the bars alike and parallel, or bush their ends softer. | common practice, no published source | {at:{heave:0,roll:-0.05,handwheel:0}}',
    ],
    {
      mm: [
        'The links bind by 4.9 mm in 3° of roll or full travel | limit 1 mm | Make the bars alike and parallel, or bush their ends softer.',
      ],
    },
  ),
  said(
    'binds far too much: a tube on hairpins',
    'bind-in-roll',
    () =>
      withParts(
        car(TUBE),
        binds(
          [
            [-75, 1],
            [75, 0.5],
          ],
          [
            [-0.05, 5],
            [0.05, 5.1],
          ],
        ),
      ),
    [
      'stop location.left.framePivot | The links bind by 3/16 in in 3° of roll or full travel | limit 0.039 in | A tube does not twist: use an I-beam, four bars, or one central wishbone ball. | common practice, no published source | {at:{heave:0,roll:0.05,handwheel:0},remedy:{kind:set,path:axle.beam,value:i-beam,words:Use an I-beam}}',
    ],
    {
      mm: [
        'The links bind by 5.1 mm in 3° of roll or full travel | limit 1 mm | A tube does not twist: use an I-beam, four bars, or one central wishbone ball.',
      ],
    },
  ),
  said(
    'an I-beam on hairpins that binds',
    'bind-in-roll',
    () => withParts(car(), binds([[75, 1.4]], [])),
    [
      'attention location.left.framePivot | The links bind by 0.055 in in 3° of roll or full travel | limit 0.039 in | Make the bars alike and parallel, or bush their ends softer. | common practice, no published source | {at:{heave:75,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'The links bind by 1.4 mm in 3° of roll or full travel | limit 1 mm | Make the bars alike and parallel, or bush their ends softer.',
      ],
    },
  ),
  said(
    'a pose that was not solved does not count',
    'bind-in-roll',
    () =>
      withParts(
        car(),
        binds(
          [
            [-75, 9, 1],
            [75, 0.5],
          ],
          [],
        ),
      ),
    [
      'info location.left.framePivot | The links bind by 0.020 in in 3° of roll or full travel | limit 0.039 in |  | common practice, no published source | {at:{heave:75,roll:0,handwheel:0}}',
    ],
    { mm: ['The links bind by 0.5 mm in 3° of roll or full travel | limit 1 mm | '] },
  ),
  said(
    'nothing solved, nothing binds',
    'bind-in-roll',
    () => withParts(car(), binds([[-75, 9, 1]], [[0.05, 9, 2]])),
    [],
  ),
  said('a tube does not twist', 'beam-twist', () => car(TUBE), []),
  said('an I-beam on hairpins twists', 'beam-twist', () => car(), [
    'info location.left.framePivot | A roll of 3° twists the I-beam 2.8° | limit 4° |  | common practice, no published source | {at:{heave:0,roll:0.0524,handwheel:0}}',
  ]),
  said(
    'an I-beam on short hairpins twists too far',
    'beam-twist',
    () => car({ location: { kind: 'hairpins', left: { framePivot: [-450, 520, 335] }, right: 'mirror' } }),
    [
      'attention location.left.framePivot | A roll of 3° twists the I-beam 6.9° | limit 4° | Bring the rod pivots nearer to the middle of the car, or make the rods longer. | common practice, no published source | {at:{heave:0,roll:0.0524,handwheel:0}}',
    ],
  ),
  said(
    'an I-beam on a wishbone does not twist',
    'beam-twist',
    () => car({ location: LOCATIONS['wishbone'] }),
    [],
  ),
  said(
    'without roll it does not twist',
    'beam-twist',
    () => car({ travel: { bump: 75, rebound: 75, roll: 0 } }),
    [],
  ),
  said(
    'a shop’s own twist',
    'beam-twist',
    () => car(),
    [
      'attention location.left.framePivot | A roll of 3° twists the I-beam 2.8° | limit 0.75° | Bring the rod pivots nearer to the middle of the car, or make the rods longer. | this shop’s own limit | {at:{heave:0,roll:0.0524,handwheel:0}}',
    ],
    { shop: { beamTwist: 0.75 } },
  ),
  said('the tie rod behind the axle', 'tie-rod-ahead', () => car(), []),
  said(
    'the tie rod in the axle’s line',
    'tie-rod-ahead',
    () =>
      withLayout(car(), {
        axle: { ...car().layout.axle, left: { ...car().layout.axle.left, tieRodBall: [0, 606, 292] } },
      }),
    [],
  ),
  said(
    'ahead, into the wheel',
    'tie-rod-ahead',
    () => car(half({ tieRodBall: [150, 676, 292] })),
    [
      'stop axle.left.tieRodBall | The tie rod ball ahead of the axle reaches 1 in into the wheel and brake |  | Put the arms behind the axle: there they clear the wheel and give Ackermann. | geometry; the room taken by wheel and brake from memory, measure yours',
    ],
    {
      mm: [
        'The tie rod ball ahead of the axle reaches 26.0 mm into the wheel and brake |  | Put the arms behind the axle: there they clear the wheel and give Ackermann.',
      ],
    },
  ),
  said(
    'ahead, splayed, with room',
    'tie-rod-ahead',
    () => car(half({ tieRodBall: [150, 645, 292] })),
    [
      'attention axle.left.tieRodBall | The tie rod is ahead of the axle; 3/16 in is left to wheel and brake |  | Put the arms behind the axle: there they clear the wheel and give Ackermann. | geometry; the room taken by wheel and brake from memory, measure yours',
    ],
    {
      mm: [
        'The tie rod is ahead of the axle; 5.0 mm is left to wheel and brake |  | Put the arms behind the axle: there they clear the wheel and give Ackermann.',
      ],
    },
  ),
  said(
    'ahead, splayed, as far as there is room',
    'tie-rod-ahead',
    () => car(half({ tieRodBall: [150, 650, 292] })),
    [
      'attention axle.left.tieRodBall | The tie rod is ahead of the axle; 0 in is left to wheel and brake |  | Put the arms behind the axle: there they clear the wheel and give Ackermann. | geometry; the room taken by wheel and brake from memory, measure yours',
    ],
    {
      mm: [
        'The tie rod is ahead of the axle; 0.0 mm is left to wheel and brake |  | Put the arms behind the axle: there they clear the wheel and give Ackermann.',
      ],
    },
  ),
  said('ahead, not splayed', 'tie-rod-ahead', () => car(half({ tieRodBall: [150, 640, 292] })), [
    'attention axle.left.tieRodBall | The tie rod is ahead of the axle with arms that do not splay: Ackermann will be reversed |  | Put the arms behind the axle: there they clear the wheel and give Ackermann. | geometry; the room taken by wheel and brake from memory, measure yours',
  ]),
  said('caster as usual', 'caster-static', () => car(), [
    'info axle.left.kingpinTop | Caster 6.1° | usual 4° to 8° |  | common practice, no published source',
  ]),
  said('caster too little', 'caster-static', () => car(half({ kingpinTop: [0, 631, 395] })), [
    'attention axle.left.kingpinTop | Caster 3.1° | usual 4° to 8° | Tip the axle back at its links: the top of the kingpin goes back. | common practice, no published source',
  ]),
  said('caster too much', 'caster-static', () => car(half({ kingpinTop: [-20, 631, 395] })), [
    'attention axle.left.kingpinTop | Caster 11.7° | usual 4° to 8° | Tip the axle forward at its links: the top of the kingpin goes ahead. | common practice, no published source',
  ]),
  said(
    'caster too much on the right',
    'caster-static',
    () => car(sides({}, { kingpinTop: [-16, -631, 395] })),
    [
      'attention axle.right.kingpinTop | Caster 10.0° on the right | usual 4° to 8° | Tip the axle forward at its links: the top of the kingpin goes ahead. | common practice, no published source',
    ],
  ),
  said(
    'caster too little on the left',
    'caster-static',
    () => car(sides({ kingpinTop: [4, 631, 395] }, {})),
    [
      'attention axle.left.kingpinTop | Caster 1.3° on the left | usual 4° to 8° | Tip the axle back at its links: the top of the kingpin goes back. | common practice, no published source',
    ],
  ),
  said(
    'caster by a shop’s own range',
    'caster-static',
    () => car(),
    [
      'attention axle.left.kingpinTop | Caster 6.1° | usual 6.5° to 8.5° | Tip the axle back at its links: the top of the kingpin goes back. | this shop’s own limit',
    ],
    { shop: { casterLeast: 6.5, casterMost: 8.5 } },
  ),
  said(
    'caster stays',
    'caster-change',
    () =>
      withParts(car(), {
        heave: sweep('heave', [
          [-75, DRAWN - 0.04],
          [75, DRAWN + 0.04],
        ]),
      }),
    [
      'info location.left.framePivot | Caster stays at 6.1° over the travel | limit 5° either way |  | common practice, no published source | {at:{heave:-75,roll:0,handwheel:0}}',
    ],
  ),
  said(
    'caster rises in droop',
    'caster-change',
    () =>
      withParts(car(), {
        heave: sweep('heave', [
          [-60, DRAWN + 3],
          [75, DRAWN - 2],
        ]),
      }),
    [
      'info location.left.framePivot | Caster rises by 3.0°, from 6.1° at ride height to 9.1° at 2 3/8 in of droop | limit 5° either way |  | common practice, no published source | {at:{heave:-60,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'Caster rises by 3.0°, from 6.1° at ride height to 9.1° at 60.0 mm of droop | limit 5° either way | ',
      ],
    },
  ),
  said(
    'caster falls in bump',
    'caster-change',
    () =>
      withParts(car({ location: LOCATIONS['wishbone'] }), {
        heave: sweep('heave', [
          [-60, DRAWN + 3],
          [75, DRAWN - 4],
        ]),
      }),
    [
      'info location.framePivot | Caster falls by 4.0°, from 6.1° at ride height to 2.1° at 2 15/16 in of bump | limit 5° either way |  | common practice, no published source | {at:{heave:75,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'Caster falls by 4.0°, from 6.1° at ride height to 2.1° at 75.0 mm of bump | limit 5° either way | ',
      ],
    },
  ),
  said(
    'caster falls too far in droop',
    'caster-change',
    () =>
      withParts(car({ location: LOCATIONS['parallel-leaf'] }), {
        heave: sweep('heave', [
          [-75, DRAWN - 5.1],
          [0, DRAWN],
          [75, DRAWN + 5],
        ]),
      }),
    [
      'attention location.left.seat | Caster falls by 5.1°, from 6.1° at ride height to 1.0° at 2 15/16 in of droop | limit 5° either way | Make the rods longer, which tips the axle less; or fit equal parallel bars, which do not tip it. | common practice, no published source | {at:{heave:-75,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'Caster falls by 5.1°, from 6.1° at ride height to 1.0° at 75.0 mm of droop | limit 5° either way | Make the rods longer, which tips the axle less; or fit equal parallel bars, which do not tip it.',
      ],
    },
  ),
  said(
    'caster rises too far in bump',
    'caster-change',
    () =>
      withParts(car({ location: LOCATIONS['four-bar'] }), {
        heave: sweep('heave', [
          [-75, DRAWN - 5],
          [0, DRAWN],
          [75, DRAWN + 6],
        ]),
      }),
    [
      'attention location.left.upper.frame | Caster rises by 6.0°, from 6.1° at ride height to 12.1° at 2 15/16 in of bump | limit 5° either way | Make the rods longer, which tips the axle less; or fit equal parallel bars, which do not tip it. | common practice, no published source | {at:{heave:75,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'Caster rises by 6.0°, from 6.1° at ride height to 12.1° at 75.0 mm of bump | limit 5° either way | Make the rods longer, which tips the axle less; or fit equal parallel bars, which do not tip it.',
      ],
    },
  ),
  said(
    'a pose that was not solved has no caster',
    'caster-change',
    () =>
      withParts(car(), {
        heave: sweep('heave', [
          [-75, 40, 1],
          [0, DRAWN],
          [75, DRAWN + 1],
        ]),
      }),
    [
      'info location.left.framePivot | Caster rises by 1.0°, from 6.1° at ride height to 7.1° at 2 15/16 in of bump | limit 5° either way |  | common practice, no published source | {at:{heave:75,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'Caster rises by 1.0°, from 6.1° at ride height to 7.1° at 75.0 mm of bump | limit 5° either way | ',
      ],
    },
  ),
  said(
    'nothing solved, no caster',
    'caster-change',
    () => withParts(car(), { heave: sweep('heave', [[-75, 40, 1]]) }),
    [],
  ),
  said(
    'a shop’s own change of caster',
    'caster-change',
    () =>
      withParts(car(), {
        heave: sweep('heave', [
          [0, DRAWN],
          [75, DRAWN + 1.5],
        ]),
      }),
    [
      'attention location.left.framePivot | Caster rises by 1.5°, from 6.1° at ride height to 7.6° at 2 15/16 in of bump | limit 1.25° either way | Make the rods longer, which tips the axle less; or fit equal parallel bars, which do not tip it. | this shop’s own limit | {at:{heave:75,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'Caster rises by 1.5°, from 6.1° at ride height to 7.6° at 75.0 mm of bump | limit 1.25° either way | Make the rods longer, which tips the axle less; or fit equal parallel bars, which do not tip it.',
      ],
      shop: { casterChange: 1.25 },
    },
  ),
  said(
    'toe-in as usual',
    'toe-static',
    () => car(),
    [
      'info axle.left.tieRodBall | Toe-in 0.091 in (2.3 mm, 0.20°), front to rear of the tyres | usual 0.031 in to 0.126 in |  | common practice, no published source',
    ],
    { mm: ['Toe-in 2.3 mm (0.091 in, 0.20°), front to rear of the tyres | usual 0.8 mm to 3.2 mm | '] },
  ),
  said(
    'toe-in too little',
    'toe-static',
    () => car(half({ toeIn: 0.02 })),
    [
      'attention axle.left.tieRodBall | Toe-in 0.018 in (0.5 mm, 0.04°), front to rear of the tyres | usual 0.031 in to 0.126 in | Add toe-in at the tie rod. | common practice, no published source',
    ],
    {
      mm: [
        'Toe-in 0.5 mm (0.018 in, 0.04°), front to rear of the tyres | usual 0.8 mm to 3.2 mm | Add toe-in at the tie rod.',
      ],
    },
  ),
  said(
    'toe-out',
    'toe-static',
    () => car(half({ toeIn: -0.1 })),
    [
      'attention axle.left.tieRodBall | Toe-out 0.091 in (2.3 mm, 0.20°), front to rear of the tyres | usual 0.031 in to 0.126 in | Add toe-in at the tie rod. | common practice, no published source',
    ],
    {
      mm: [
        'Toe-out 2.3 mm (0.091 in, 0.20°), front to rear of the tyres | usual 0.8 mm to 3.2 mm | Add toe-in at the tie rod.',
      ],
    },
  ),
  said(
    'toe-in too much',
    'toe-static',
    () => car(half({ toeIn: 0.4 })),
    [
      'attention axle.left.tieRodBall | Toe-in 0.363 in (9.2 mm, 0.80°), front to rear of the tyres | usual 0.031 in to 0.126 in | Take toe-in off at the tie rod. | common practice, no published source',
    ],
    {
      mm: [
        'Toe-in 9.2 mm (0.363 in, 0.80°), front to rear of the tyres | usual 0.8 mm to 3.2 mm | Take toe-in off at the tie rod.',
      ],
    },
  ),
  said(
    'none: no toe-out',
    'toe-static',
    () => car(half({ toeIn: 0 })),
    [
      'attention axle.left.tieRodBall | Toe-in 0.000 in (0.0 mm, 0.00°), front to rear of the tyres | usual 0.031 in to 0.126 in | Add toe-in at the tie rod. | common practice, no published source',
    ],
    {
      mm: [
        'Toe-in 0.0 mm (0.000 in, 0.00°), front to rear of the tyres | usual 0.8 mm to 3.2 mm | Add toe-in at the tie rod.',
      ],
    },
  ),
  said(
    'unlike on the two sides',
    'toe-static',
    () => car(sides({ toeIn: 0.25 }, { toeIn: -0.1 })),
    [
      'info axle.left.tieRodBall | Toe-in 0.068 in (1.7 mm, 0.15°), front to rear of the tyres | usual 0.031 in to 0.126 in |  | common practice, no published source',
    ],
    { mm: ['Toe-in 1.7 mm (0.068 in, 0.15°), front to rear of the tyres | usual 0.8 mm to 3.2 mm | '] },
  ),
  said(
    'a shop that wants toe-out',
    'toe-static',
    () => car(half({ toeIn: -0.1 })),
    [
      'info axle.left.tieRodBall | Toe-out 0.091 in (2.3 mm, 0.20°), front to rear of the tyres | usual toe-out 0.125 in to 0.000 in |  | this shop’s own limit',
    ],
    {
      mm: [
        'Toe-out 2.3 mm (0.091 in, 0.20°), front to rear of the tyres | usual toe-out 3.2 mm to 0.0 mm | ',
      ],
      shop: { toeLeast: -3.175, toeMost: 0 },
    },
  ),
  said(
    'solved in heave alone',
    'bind-in-roll',
    () =>
      withParts(
        car(),
        binds(
          [
            [-75, 0.3],
            [0, 0.2],
            [75, 0.3],
          ],
          [[0.05, 9, 2]],
        ),
      ),
    [
      'info location.left.framePivot | The links bind by 0.012 in in 3° of roll or full travel | limit 0.039 in |  | common practice, no published source | {at:{heave:-75,roll:0,handwheel:0}}',
    ],
    { mm: ['The links bind by 0.3 mm in 3° of roll or full travel | limit 1 mm | '] },
  ),
  said(
    'a twentieth is told',
    'bind-in-roll',
    () => withParts(car(), binds([[-75, 0.05]], [])),
    [
      'info location.left.framePivot | The links bind by 0.002 in in 3° of roll or full travel | limit 0.039 in |  | common practice, no published source | {at:{heave:-75,roll:0,handwheel:0}}',
    ],
    { mm: ['The links bind by 0.1 mm in 3° of roll or full travel | limit 1 mm | '] },
  ),
  said(
    'caster rises as far as it falls',
    'caster-change',
    () =>
      withParts(car(), {
        heave: sweep('heave', [
          [-75, DRAWN + 2],
          [75, DRAWN - 2],
        ]),
      }),
    [
      'info location.left.framePivot | Caster falls by 2.0°, from 6.1° at ride height to 4.1° at 2 15/16 in of bump | limit 5° either way |  | common practice, no published source | {at:{heave:75,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'Caster falls by 2.0°, from 6.1° at ride height to 4.1° at 75.0 mm of bump | limit 5° either way | ',
      ],
    },
  ),
  said(
    'caster in one solved pose',
    'caster-change',
    () => withParts(car(), { heave: sweep('heave', [[10, DRAWN]]) }),
    [
      'info location.left.framePivot | Caster stays at 6.1° over the travel | limit 5° either way |  | common practice, no published source | {at:{heave:10,roll:0,handwheel:0}}',
    ],
  ),
  said(
    'ahead, splayed by next to nothing',
    'tie-rod-ahead',
    () => car(half({ tieRodBall: [150, 640.001, 292] })),
    [
      'attention axle.left.tieRodBall | The tie rod is ahead of the axle; 3/8 in is left to wheel and brake |  | Put the arms behind the axle: there they clear the wheel and give Ackermann. | geometry; the room taken by wheel and brake from memory, measure yours',
    ],
    {
      mm: [
        'The tie rod is ahead of the axle; 10.0 mm is left to wheel and brake |  | Put the arms behind the axle: there they clear the wheel and give Ackermann.',
      ],
    },
  ),
  said(
    'sides that differ by less than is told',
    'caster-static',
    () => car(sides({}, { kingpinTop: [-7.005, -631, 395] })),
    ['info axle.right.kingpinTop | Caster 6.1° | usual 4° to 8° |  | common practice, no published source'],
  ),
];

describe('what is said of the axle', () => {
  test.each(SAID)('$label', (one) => {
    expect(heard(one)).toEqual({ inches: one.inches, mm: one.mm });
  });
});

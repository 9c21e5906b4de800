import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../../shared-math/findings/index.ts';
import { car, heard, said, withLayout } from '../../support/judged-car.ts';
import { LATERALS, LOCATIONS } from '../../support/layouts.ts';

// The whole of each finding in both units, with figures put in where a rule takes them ready made: which way round its
// words, parts and remedies go, and what lies at a limit and on either side of it.

const { axle: AXLE, car: CAR, steering: STEERING } = car().layout;
const axle = (over: object) => ({ axle: { ...AXLE, left: { ...AXLE.left, ...over } } });
const carOf = (over: object) => ({ car: { ...CAR, ...over } });
const boxOf = (over: object) => ({ steering: { ...STEERING, box: { ...STEERING.box, ...over } } });
const barred = () => car({ lateral: LATERALS.bar });
const barOf = (over: object) => ({ lateral: { ...barred().layout.lateral, ...over } });
function fourBar(bar: 'upper' | 'lower', over: object): Analysis {
  const bars = car({ location: LOCATIONS['four-bar'] });
  const { location } = bars.layout;
  if (location.kind !== 'four-bar') throw new Error('four bars');
  return withLayout(bars, {
    location: { ...location, left: { ...location.left, [bar]: { ...location.left[bar], ...over } } },
  });
}

const SAID = [
  said('nothing is implausible', 'plausible', () => car(), []),
  said(
    'the least that such cars have',
    'plausible',
    () =>
      withLayout(
        car(),
        carOf({ wheelbase: 1500, tyreRadius: 180, tyreWidth: 50, handwheelRadius: 100, frontAxleLoad: 1500 }),
      ),
    [],
  ),
  said(
    'the most that such cars have',
    'plausible',
    () =>
      withLayout(
        car(),
        carOf({
          wheelbase: 6000,
          tyreRadius: 700,
          tyreWidth: 500,
          handwheelRadius: 350,
          frontAxleLoad: 40_000,
        }),
      ),
    [],
  ),
  said(
    'a wheelbase in inches taken in mm',
    'plausible',
    () => withLayout(car(), carOf({ wheelbase: 104 })),
    [
      'attention axle.left.wheelCentre | Wheelbase 4 1/8 in: too small for any such car | usual 59 1/16 in to 236 1/4 in | Was 104 in or 2641.6 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.wheelbase,value:2641.6,words:Set it to 104 in or 2641.6 mm}}',
    ],
    {
      mm: [
        'Wheelbase 104.0 mm: too small for any such car | usual 1500.0 mm to 6000.0 mm | Was 2641.6 mm or 104 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a wheelbase in mm taken in inches',
    'plausible',
    () => withLayout(car(), carOf({ wheelbase: 2640 * 25.4 })),
    [
      'attention axle.left.wheelCentre | Wheelbase 2640 in: too large for any such car | usual 59 1/16 in to 236 1/4 in | Was 103 15/16 in or 2640 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.wheelbase,value:2640,words:Set it to 103 15/16 in or 2640 mm}}',
    ],
    {
      mm: [
        'Wheelbase 67056.0 mm: too large for any such car | usual 1500.0 mm to 6000.0 mm | Was 2640 mm or 103.94 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a wheelbase that is neither',
    'plausible',
    () => withLayout(car(), carOf({ wheelbase: 1400 })),
    [
      'attention axle.left.wheelCentre | Wheelbase 55 1/8 in: too small for any such car | usual 59 1/16 in to 236 1/4 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Wheelbase 1400.0 mm: too small for any such car | usual 1500.0 mm to 6000.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a tyre’s diameter taken for its radius',
    'plausible',
    () => withLayout(car(), carOf({ tyreRadius: 720 })),
    [
      'attention axle.left.wheelCentre | Tyre radius 28 3/8 in: too large for any such car | usual 7 1/16 in to 27 9/16 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Tyre radius 720.0 mm: too large for any such car | usual 180.0 mm to 700.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a tyre’s radius in inches',
    'plausible',
    () => withLayout(car(), carOf({ tyreRadius: 13 })),
    [
      'attention axle.left.wheelCentre | Tyre radius 1/2 in: too small for any such car | usual 7 1/16 in to 27 9/16 in | Was 13 in or 330.2 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.tyreRadius,value:330.2,words:Set it to 13 in or 330.2 mm}}',
    ],
    {
      mm: [
        'Tyre radius 13.0 mm: too small for any such car | usual 180.0 mm to 700.0 mm | Was 330.2 mm or 13 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a tyre’s width in inches',
    'plausible',
    () => withLayout(car(), carOf({ tyreWidth: 6 })),
    [
      'attention axle.left.wheelCentre | Tyre width 1/4 in: too small for any such car | usual 1 15/16 in to 19 11/16 in | Was 6 in or 152.4 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.tyreWidth,value:152.4,words:Set it to 6 in or 152.4 mm}}',
    ],
    {
      mm: [
        'Tyre width 6.0 mm: too small for any such car | usual 50.0 mm to 500.0 mm | Was 152.4 mm or 6 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a handwheel in inches, and one too large',
    'plausible',
    () => withLayout(car(), carOf({ handwheelRadius: 7.5, tyreWidth: 510 })),
    [
      'attention axle.left.wheelCentre | Tyre width 20 1/16 in: too large for any such car | usual 1 15/16 in to 19 11/16 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
      'attention axle.left.wheelCentre | Handwheel radius 5/16 in: too small for any such car | usual 3 15/16 in to 13 3/4 in | Was 7 1/2 in or 190.5 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.handwheelRadius,value:190.5,words:Set it to 7 1/2 in or 190.5 mm}}',
    ],
    {
      mm: [
        'Tyre width 510.0 mm: too large for any such car | usual 50.0 mm to 500.0 mm | Measure it again, and look at the unit.',
        'Handwheel radius 7.5 mm: too small for any such car | usual 100.0 mm to 350.0 mm | Was 190.5 mm or 7.5 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a handwheel too large',
    'plausible',
    () => withLayout(car(), carOf({ handwheelRadius: 360 })),
    [
      'attention axle.left.wheelCentre | Handwheel radius 14 3/16 in: too large for any such car | usual 3 15/16 in to 13 3/4 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Handwheel radius 360.0 mm: too large for any such car | usual 100.0 mm to 350.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a kingpin too short',
    'plausible',
    () => withLayout(car(), axle({ kingpinTop: [7, 649, 304] })),
    [
      'attention axle.left.kingpinTop | Kingpin 1.535 in: too short for such a part | usual 1 9/16 in to 15 3/4 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Kingpin 39.0 mm: too short for such a part | usual 40.0 mm to 400.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a kingpin as short as any',
    'plausible',
    () => withLayout(car(), axle({ kingpinTop: [7, 649, 305] })),
    [],
  ),
  said(
    'a kingpin as long as any, and longer',
    'plausible',
    () => withLayout(car(), axle({ kingpinTop: [7, 649, 665] })),
    [],
  ),
  said(
    'a kingpin too long',
    'plausible',
    () => withLayout(car(), axle({ kingpinTop: [7, 649, 666] })),
    [
      'attention axle.left.kingpinTop | Kingpin 15 13/16 in: too long for such a part | usual 1 9/16 in to 15 3/4 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Kingpin 401.0 mm: too long for such a part | usual 40.0 mm to 400.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a tie rod too short',
    'plausible',
    () => withLayout(car(), axle({ tieRodBall: [-150, -110, 292] })),
    [
      'attention axle.left.tieRodBall | Tie rod 19 1/2 in: too short for such a part | usual 19 11/16 in to 86 5/8 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Tie rod 496.0 mm: too short for such a part | usual 500.0 mm to 2200.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a tie rod too long',
    'plausible',
    () =>
      withLayout(car(), {
        axle: {
          ...AXLE,
          left: { ...AXLE.left, tieRodBall: [-150, 1110, 292] },
          right: { ...AXLE.right, tieRodBall: [-150, -1100, 292] },
        },
      }),
    [
      'attention axle.left.tieRodBall | Tie rod 87 in: too long for such a part | usual 19 11/16 in to 86 5/8 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Tie rod 2210.0 mm: too long for such a part | usual 500.0 mm to 2200.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a drag link too short',
    'plausible',
    () => withLayout(car(), { steering: { ...STEERING, dragLinkBall: [-700, 484, 350] } }),
    [
      'attention steering.dragLinkBall | Drag link 4 in: too short for such a part | usual 4 3/4 in to 78 3/4 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Drag link 101.3 mm: too short for such a part | usual 120.0 mm to 2000.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a drag link too long',
    'plausible',
    () => withLayout(car(), { steering: { ...STEERING, dragLinkBall: [1300, 484, 395] } }),
    [
      'attention steering.dragLinkBall | Drag link 82 11/16 in: too long for such a part | usual 4 3/4 in to 78 3/4 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Drag link 2100.5 mm: too long for such a part | usual 120.0 mm to 2000.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a pitman arm too short',
    'plausible',
    () => withLayout(car(), boxOf({ sectorCentre: [-800, 500, 380] })),
    [
      'attention steering.box.pitmanBall | Pitman arm 1 3/16 in: too short for such a part | usual 1 9/16 in to 19 11/16 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Pitman arm 30.0 mm: too short for such a part | usual 40.0 mm to 500.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a pitman arm too long',
    'plausible',
    () => withLayout(car(), boxOf({ sectorCentre: [-800, 500, 860] })),
    [
      'attention steering.box.pitmanBall | Pitman arm 20 1/16 in: too long for such a part | usual 1 9/16 in to 19 11/16 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Pitman arm 510.0 mm: too long for such a part | usual 40.0 mm to 500.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a lateral bar too short',
    'plausible',
    () => withLayout(barred(), barOf({ frame: [-72, -400, 352] })),
    [
      'attention lateral.frame | Lateral bar 4 3/4 in: too short for such a part | usual 5 7/8 in to 78 3/4 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Lateral bar 120.0 mm: too short for such a part | usual 150.0 mm to 2000.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a lateral bar too long',
    'plausible',
    () => withLayout(barred(), barOf({ frame: [-72, 1490, 352] })),
    [
      'attention lateral.frame | Lateral bar 79 1/8 in: too long for such a part | usual 5 7/8 in to 78 3/4 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Lateral bar 2010.0 mm: too long for such a part | usual 150.0 mm to 2000.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'an upper bar too short',
    'plausible',
    () => fourBar('upper', { frame: [-100, 430, 395] }),
    [
      'attention location.left.upper.frame | Upper bar 2 3/16 in: too short for such a part | usual 5 7/8 in to 78 3/4 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Upper bar 55.0 mm: too short for such a part | usual 150.0 mm to 2000.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a lower bar too long',
    'plausible',
    () => fourBar('lower', { frame: [-2100, 430, 262] }),
    [
      'attention location.left.lower.frame | Lower bar 80 7/8 in: too long for such a part | usual 5 7/8 in to 78 3/4 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Lower bar 2055.0 mm: too long for such a part | usual 150.0 mm to 2000.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a point too far left, in mm taken in inches',
    'plausible',
    () => withLayout(barred(), barOf({ frame: [-72, 610 * 25.4, 370] })),
    [
      'attention lateral.frame | Lateral bar, frame end stands 610 in left: no part of a front end is there | usual 59 1/16 in right to 59 1/16 in left | Was 24 in or 610 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:lateral.frame,to:[-72,610,370]}}',
    ],
    {
      mm: [
        'Lateral bar, frame end stands 15494.0 mm left: no part of a front end is there | usual 1500.0 mm right to 1500.0 mm left | Was 610 mm or 24.02 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a point too far right',
    'plausible',
    () => withLayout(barred(), barOf({ axle: [-72, -1600, 370] })),
    [
      'attention lateral.axle | Lateral bar, axle end stands 63 in right: no part of a front end is there | usual 59 1/16 in right to 59 1/16 in left | Was 2 1/2 in or 63 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:lateral.axle,to:[-72,-62.9921,370]}}',
    ],
    {
      mm: [
        'Lateral bar, axle end stands 1600.0 mm right: no part of a front end is there | usual 1500.0 mm right to 1500.0 mm left | Was 63 mm or 2.48 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a point too far ahead',
    'plausible',
    () => withLayout(car(), boxOf({ sectorCentre: [2001, 500, 490] })),
    [
      'attention steering.box.sectorCentre | Steering box stands 78.780 in ahead: no part of a front end is there | usual 157 1/2 in behind to 78 3/4 in ahead | Was 3 1/8 in or 78.8 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:steering.box.sectorCentre,to:[78.7795,500,490]}}',
    ],
    {
      mm: [
        'Steering box stands 2001.0 mm ahead: no part of a front end is there | usual 4000.0 mm behind to 2000.0 mm ahead | Was 78.8 mm or 3.1 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a point too far behind, beyond either unit',
    'plausible',
    () => withLayout(car(), boxOf({ sectorCentre: [-120_000, 500, 490] })),
    [
      'attention steering.box.sectorCentre | Steering box stands 4724 7/16 in behind: no part of a front end is there | usual 157 1/2 in behind to 78 3/4 in ahead | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Steering box stands 120000.0 mm behind: no part of a front end is there | usual 4000.0 mm behind to 2000.0 mm ahead | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a point too far up',
    'plausible',
    () => withLayout(car(), boxOf({ sectorCentre: [-800, 500, 2501] })),
    [
      'attention steering.box.sectorCentre | Steering box stands 98.465 in up: no part of a front end is there | usual 11 13/16 in below the ground to 98 7/16 in up | Was 3 7/8 in or 98.5 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:steering.box.sectorCentre,to:[-800,500,98.4646]}}',
    ],
    {
      mm: [
        'Steering box stands 2501.0 mm up: no part of a front end is there | usual 300.0 mm below the ground to 2500.0 mm up | Was 98.5 mm or 3.88 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a point below the ground',
    'plausible',
    () => withLayout(car(), boxOf({ sectorCentre: [-800, 500, -400] })),
    [
      'attention steering.box.sectorCentre | Steering box stands 15 3/4 in below the ground: no part of a front end is there | usual 11 13/16 in below the ground to 98 7/16 in up | Was 5/8 in or 15.7 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:steering.box.sectorCentre,to:[-800,500,-15.748]}}',
    ],
    {
      mm: [
        'Steering box stands 400.0 mm below the ground: no part of a front end is there | usual 300.0 mm below the ground to 2500.0 mm up | Was 15.7 mm or 0.62 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'points at the edge of what is plausible: their links alone are doubted',
    'plausible',
    () => withLayout(car(), boxOf({ sectorCentre: [2000, 1500, 2500], pitmanBall: [-4000, -1500, -300] })),
    [
      'attention steering.dragLinkBall | Drag link 177 7/8 in: too long for such a part | usual 4 3/4 in to 78 3/4 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
      'attention steering.box.pitmanBall | Pitman arm 286 3/16 in: too long for such a part | usual 1 9/16 in to 19 11/16 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Drag link 4518.8 mm: too long for such a part | usual 120.0 mm to 2000.0 mm | Measure it again, and look at the unit.',
        'Pitman arm 7269.1 mm: too long for such a part | usual 40.0 mm to 500.0 mm | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a load in pounds taken in newtons',
    'plausible',
    () => withLayout(car(), carOf({ frontAxleLoad: 1100 })),
    [
      'attention axle.left.wheelCentre | Load on the front axle 247 lb: too little for any such car | usual 337 lb to 8992 lb | Was 1100 lb meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.frontAxleLoad,value:4893.0438,words:Set it to 1100 lb}}',
    ],
    {
      mm: [
        'Load on the front axle 112 kg: too little for any such car | usual 153 kg to 4079 kg | Was 499 kg meant? Set it to that.',
      ],
    },
  ),
  said(
    'a load in kilograms taken in newtons',
    'plausible',
    () => withLayout(car(), carOf({ frontAxleLoad: 250 })),
    [
      'attention axle.left.wheelCentre | Load on the front axle 56 lb: too little for any such car | usual 337 lb to 8992 lb | Was 551 lb meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.frontAxleLoad,value:2451.6625,words:Set it to 551 lb}}',
    ],
    {
      mm: [
        'Load on the front axle 25 kg: too little for any such car | usual 153 kg to 4079 kg | Was 250 kg meant? Set it to that.',
      ],
    },
  ),
  said(
    'a load in newtons taken in pounds',
    'plausible',
    () => withLayout(car(), carOf({ frontAxleLoad: 44_482 })),
    [
      'attention axle.left.wheelCentre | Load on the front axle 10000 lb: too much for any such car | usual 337 lb to 8992 lb | Was 2248 lb meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.frontAxleLoad,value:9999.9514,words:Set it to 2248 lb}}',
    ],
    {
      mm: [
        'Load on the front axle 4536 kg: too much for any such car | usual 153 kg to 4079 kg | Was 1020 kg meant? Set it to that.',
      ],
    },
  ),
  said(
    'a load in newtons taken in kilograms',
    'plausible',
    () => withLayout(car(), carOf({ frontAxleLoad: 300_000 })),
    [
      'attention axle.left.wheelCentre | Load on the front axle 67443 lb: too much for any such car | usual 337 lb to 8992 lb | Was 6877 lb meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.frontAxleLoad,value:30591.4864,words:Set it to 6877 lb}}',
    ],
    {
      mm: [
        'Load on the front axle 30591 kg: too much for any such car | usual 153 kg to 4079 kg | Was 3119 kg meant? Set it to that.',
      ],
    },
  ),
  said(
    'a load that is neither',
    'plausible',
    () => withLayout(car(), carOf({ frontAxleLoad: 20 })),
    [
      'attention axle.left.wheelCentre | Load on the front axle 4 lb: too little for any such car | usual 337 lb to 8992 lb | Weigh it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Load on the front axle 2 kg: too little for any such car | usual 153 kg to 4079 kg | Weigh it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a point ahead by the most that inches explain',
    'plausible',
    () => withLayout(car(), boxOf({ sectorCentre: [2000 * 25.4, 500, 490] })),
    [
      'attention steering.box.sectorCentre | Steering box stands 2000 in ahead: no part of a front end is there | usual 157 1/2 in behind to 78 3/4 in ahead | Was 78 3/4 in or 2000 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:steering.box.sectorCentre,to:[2000,500,490]}}',
    ],
    {
      mm: [
        'Steering box stands 50800.0 mm ahead: no part of a front end is there | usual 4000.0 mm behind to 2000.0 mm ahead | Was 2000 mm or 78.74 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a point ahead by more than inches explain',
    'plausible',
    () => withLayout(car(), boxOf({ sectorCentre: [2010 * 25.4, 500, 490] })),
    [
      'attention steering.box.sectorCentre | Steering box stands 2010 in ahead: no part of a front end is there | usual 157 1/2 in behind to 78 3/4 in ahead | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
    ],
    {
      mm: [
        'Steering box stands 51054.0 mm ahead: no part of a front end is there | usual 4000.0 mm behind to 2000.0 mm ahead | Measure it again, and look at the unit.',
      ],
    },
  ),
  said(
    'a point behind by the most that inches explain',
    'plausible',
    () => withLayout(car(), boxOf({ sectorCentre: [-4000 * 25.4, 500, 490] })),
    [
      'attention steering.box.sectorCentre | Steering box stands 4000 in behind: no part of a front end is there | usual 157 1/2 in behind to 78 3/4 in ahead | Was 157 1/2 in or 4000 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:steering.box.sectorCentre,to:[-4000,500,490]}}',
    ],
    {
      mm: [
        'Steering box stands 101600.0 mm behind: no part of a front end is there | usual 4000.0 mm behind to 2000.0 mm ahead | Was 4000 mm or 157.48 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a wheelbase whose inches are the least, in mm',
    'plausible',
    () => withLayout(car(), carOf({ wheelbase: 6000 * 25.4 })),
    [
      'attention axle.left.wheelCentre | Wheelbase 6000 in: too large for any such car | usual 59 1/16 in to 236 1/4 in | Was 236 1/4 in or 6000 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.wheelbase,value:6000,words:Set it to 236 1/4 in or 6000 mm}}',
    ],
    {
      mm: [
        'Wheelbase 152400.0 mm: too large for any such car | usual 1500.0 mm to 6000.0 mm | Was 6000 mm or 236.22 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'a tyre and its load off at once',
    'plausible',
    () => withLayout(car(), carOf({ tyreWidth: 45, frontAxleLoad: 1450 })),
    [
      'attention axle.left.wheelCentre | Tyre width 1 3/4 in: too small for any such car | usual 1 15/16 in to 19 11/16 in | Measure it again, and look at the unit. | common practice, no published source: wider than any such car',
      'attention axle.left.wheelCentre | Load on the front axle 326 lb: too little for any such car | usual 337 lb to 8992 lb | Was 1450 lb meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.frontAxleLoad,value:6449.9213,words:Set it to 1450 lb}}',
    ],
    {
      mm: [
        'Tyre width 45.0 mm: too small for any such car | usual 50.0 mm to 500.0 mm | Measure it again, and look at the unit.',
        'Load on the front axle 148 kg: too little for any such car | usual 153 kg to 4079 kg | Was 658 kg meant? Set it to that.',
      ],
    },
  ),
  said(
    'a place off, its links and sizes not doubted beside it, its load is',
    'plausible',
    () =>
      withLayout(car(), {
        ...boxOf({ sectorCentre: [-800, 1600, 490] }),
        ...carOf({ wheelbase: 104, frontAxleLoad: 40_100 }),
      }),
    [
      'attention steering.box.sectorCentre | Steering box stands 63 in left: no part of a front end is there | usual 59 1/16 in right to 59 1/16 in left | Was 2 1/2 in or 63 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:steering.box.sectorCentre,to:[-800,62.9921,490]}}',
      'attention axle.left.wheelCentre | Load on the front axle 9015 lb: too much for any such car | usual 337 lb to 8992 lb | Was 2027 lb meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:set,path:car.frontAxleLoad,value:9014.8386,words:Set it to 2027 lb}}',
    ],
    {
      mm: [
        'Steering box stands 1600.0 mm left: no part of a front end is there | usual 1500.0 mm right to 1500.0 mm left | Was 63 mm or 2.48 in meant? Set it to that.',
        'Load on the front axle 4089 kg: too much for any such car | usual 153 kg to 4079 kg | Was 919 kg meant? Set it to that.',
      ],
    },
  ),
  said(
    'the points of one side off: each, and not the other side’s',
    'plausible',
    () =>
      withLayout(
        car(),
        axle({
          wheelCentre: [0, 1600, 330],
          kingpinTop: [-7, 1590, 395],
          kingpinBottom: [7, 1595, 265],
          tieRodBall: [-150, 1580, 292],
        }),
      ),
    [
      'attention axle.left.kingpinTop | Left kingpin, top stands 62 5/8 in left: no part of a front end is there | usual 59 1/16 in right to 59 1/16 in left | Was 2 7/16 in or 62.6 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:axle.left.kingpinTop,to:[-7,62.5984,395]}}',
      'attention axle.left.kingpinBottom | Left kingpin, bottom stands 62 13/16 in left: no part of a front end is there | usual 59 1/16 in right to 59 1/16 in left | Was 2 1/2 in or 62.8 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:axle.left.kingpinBottom,to:[7,62.7953,265]}}',
      'attention axle.left.wheelCentre | Left wheel centre stands 63 in left: no part of a front end is there | usual 59 1/16 in right to 59 1/16 in left | Was 2 1/2 in or 63 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:axle.left.wheelCentre,to:[0,62.9921,330]}}',
      'attention axle.left.tieRodBall | Left tie rod ball stands 62 3/16 in left: no part of a front end is there | usual 59 1/16 in right to 59 1/16 in left | Was 2 7/16 in or 62.2 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:axle.left.tieRodBall,to:[-150,62.2047,292]}}',
    ],
    {
      mm: [
        'Left kingpin, top stands 1590.0 mm left: no part of a front end is there | usual 1500.0 mm right to 1500.0 mm left | Was 62.6 mm or 2.46 in meant? Set it to that.',
        'Left kingpin, bottom stands 1595.0 mm left: no part of a front end is there | usual 1500.0 mm right to 1500.0 mm left | Was 62.8 mm or 2.47 in meant? Set it to that.',
        'Left wheel centre stands 1600.0 mm left: no part of a front end is there | usual 1500.0 mm right to 1500.0 mm left | Was 63 mm or 2.48 in meant? Set it to that.',
        'Left tie rod ball stands 1580.0 mm left: no part of a front end is there | usual 1500.0 mm right to 1500.0 mm left | Was 62.2 mm or 2.45 in meant? Set it to that.',
      ],
    },
  ),
  said(
    'both sides off: each is said',
    'plausible',
    () =>
      withLayout(car(), {
        axle: {
          ...AXLE,
          left: { ...AXLE.left, tieRodBall: [-150, 1580, 292] },
          right: { ...AXLE.right, tieRodBall: [-150, -1580, 292] },
        },
      }),
    [
      'attention axle.left.tieRodBall | Left tie rod ball stands 62 3/16 in left: no part of a front end is there | usual 59 1/16 in right to 59 1/16 in left | Was 2 7/16 in or 62.2 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:axle.left.tieRodBall,to:[-150,62.2047,292]}}',
      'attention axle.right.tieRodBall | Right tie rod ball stands 62 3/16 in right: no part of a front end is there | usual 59 1/16 in right to 59 1/16 in left | Was 2 7/16 in or 62.2 mm meant? Set it to that. | common practice, no published source: wider than any such car | {remedy:{kind:move,id:axle.right.tieRodBall,to:[-150,-62.2047,292]}}',
    ],
    {
      mm: [
        'Left tie rod ball stands 1580.0 mm left: no part of a front end is there | usual 1500.0 mm right to 1500.0 mm left | Was 62.2 mm or 2.45 in meant? Set it to that.',
        'Right tie rod ball stands 1580.0 mm right: no part of a front end is there | usual 1500.0 mm right to 1500.0 mm left | Was 62.2 mm or 2.45 in meant? Set it to that.',
      ],
    },
  ),
];

describe('what is said of slips of the hand', () => {
  test.each(SAID)('$label', (one) => {
    expect(heard(one)).toEqual({ inches: one.inches, mm: one.mm });
  });
});

import { describe, expect, test } from 'vitest';
import { box, car, heard, said } from '../../support/judged-car.ts';
import { DOUBLE_D_SIDE, rawShaft, SPLINE, SPLINE_SIDE } from '../../support/shafts.ts';

// The whole of each finding in both units, with figures put in where a rule takes them ready made: which way round its
// words, parts and remedies go, and what lies at a limit and on either side of it.

const FIRST = { kind: 'single', centre: [-1280, 340, 735] };
const LAST = { kind: 'single', centre: [-1002, 410, 561] };
const MIDDLE = { kind: 'single', centre: [-1140, 370, 660] };
const PIECES = [{ clock: -56.2 }, { clock: -66.9 }];
const ENDS = { columnSide: DOUBLE_D_SIDE, boxSide: SPLINE_SIDE };
const STOCK = { kind: 'double-d', diameter: 19.05, acrossFlats: 14.2 };
const COLUMN = { end: [-1296, 340, 743], axis: [2, 0, -1] };
const BOX = { end: [-986, 410, 557], axis: [4, 0, -1] };
const shaft = (over: object = {}, rest: object = {}) =>
  car({
    shaft: rawShaft({ column: COLUMN, box: BOX, joints: [FIRST, LAST], shafts: [{ clock: -32.6 }], ...over }),
    ...rest,
  });
const tube = (over: object) => ({
  name: 'Header tube',
  role: 'header',
  kind: 'capsule',
  from: [-1140, 330, 600],
  to: [-1140, 460, 640],
  radius: 22,
  mirrored: false,
  ...over,
});
const FAR = {
  column: { end: [-1896, 340, 943], axis: [2, 0, -1] },
  joints: [{ kind: 'single', centre: [-1880, 340, 935] }, LAST],
};
const FARTHER = {
  column: { end: [-2896, 340, 1443], axis: [2, 0, -1] },
  joints: [{ kind: 'single', centre: [-2880, 340, 1435] }, LAST],
};
const skew = (inputAngle?: number) =>
  shaft(
    { box: { end: [-986, 410, 557], axis: [4, 1, -1] } },
    { steering: box(inputAngle === undefined ? {} : { inputAngle }) },
  );

const SAID = [
  said('the input square to the sector shaft', 'shaft-box-input', () => shaft(), [
    'info shaft.box.end | The box’s input stands at 90.0° to its sector shaft | 90°, limit 2° off |  | common practice, no published source; square is assumed, the box’s own angle rules',
  ]),
  said('the input skew', 'shaft-box-input', () => skew(), [
    'attention shaft.box.end | The box’s input is drawn at 76.4° to its sector shaft: a worm lies square to it | 90°, limit 2° off | Turn the input as drawn, or the box, until they agree; or type the angle that this box really has. | common practice, no published source; square is assumed, the box’s own angle rules | {remedy:{kind:set,path:shaft,value:{column:{end:[-1296,340,743],axis:[2,0,-1]},box:{end:[-986,410,557],axis:[0.9701,0,-0.2425]},joints:[{kind:single,centre:[-1280,340,735]},{kind:single,centre:[-1001.549,410,560.887]}],shafts:[{clock:-32.6}],supports:[]},words:Turn the input to the box’s own angle}}',
  ]),
  said('the input skew, square given', 'shaft-box-input', () => skew(90), [
    'attention shaft.box.end | The box’s input is drawn at 76.4° to its sector shaft: a worm lies square to it | 90°, limit 2° off | Turn the input as drawn, or the box, until they agree; or type the angle that this box really has. | common practice, no published source | {remedy:{kind:set,path:shaft,value:{column:{end:[-1296,340,743],axis:[2,0,-1]},box:{end:[-986,410,557],axis:[0.9701,0,-0.2425]},joints:[{kind:single,centre:[-1280,340,735]},{kind:single,centre:[-1001.549,410,560.887]}],shafts:[{clock:-32.6}],supports:[]},words:Turn the input to the box’s own angle}}',
  ]),
  said('the input skew in a box of its own angle', 'shaft-box-input', () => skew(85.5), [
    'attention shaft.box.end | The box’s input is drawn at 76.4° to its sector shaft: this box has 85.5° | 85.5°, limit 2° off | Turn the input as drawn, or the box, until they agree; or type the angle that this box really has. | common practice, no published source | {remedy:{kind:set,path:shaft,value:{column:{end:[-1296,340,743],axis:[2,0,-1]},box:{end:[-986,410,557],axis:[0.9672,0.0785,-0.2418]},joints:[{kind:single,centre:[-1280,340,735]},{kind:single,centre:[-1001.501,408.742,560.875]}],shafts:[{clock:-32.6}],supports:[]},words:Turn the input to the box’s own angle}}',
  ]),
  said('the input in a box of its own angle', 'shaft-box-input', () => skew(76.4), [
    'info shaft.box.end | The box’s input stands at 76.37° to its sector shaft | 76.4°, limit 2° off |  | common practice, no published source',
  ]),
  said(
    'a shop’s own angle of the input',
    'shaft-box-input',
    () => skew(),
    [
      'attention shaft.box.end | The box’s input is drawn at 76.4° to its sector shaft: a worm lies square to it | 90°, limit 12.5° off | Turn the input as drawn, or the box, until they agree; or type the angle that this box really has. | this shop’s own limit; square is assumed, the box’s own angle rules | {remedy:{kind:set,path:shaft,value:{column:{end:[-1296,340,743],axis:[2,0,-1]},box:{end:[-986,410,557],axis:[0.9701,0,-0.2425]},joints:[{kind:single,centre:[-1280,340,735]},{kind:single,centre:[-1001.549,410,560.887]}],shafts:[{clock:-32.6}],supports:[]},words:Turn the input to the box’s own angle}}',
    ],
    { shop: { boxInput: 12.5 } },
  ),
  said('no shaft, no input', 'shaft-box-input', () => car(), []),
  said('joints within their limits', 'shaft-joint-angle', () => shaft(), [
    'info shaft.joints.1.centre | Joint 2 stands at 21.6°, nearest to its limit of the shaft’s joints | limit 30° |  | common practice, no published source',
  ]),
  said(
    'a single joint past its limit',
    'shaft-joint-angle',
    () => shaft({ joints: [FIRST, { kind: 'single', centre: [-1002, 510, 561] }] }),
    [
      'stop shaft.joints.1.centre | Joint 2 stands at 32.4°, too much for a single joint | limit 30° | Use a double joint there, or move it so that its shafts run straighter. | common practice, no published source | {remedy:{kind:set,path:shaft.joints.1.kind,value:double,words:Use a double joint}}',
    ],
  ),
  said(
    'a single joint past a double’s',
    'shaft-joint-angle',
    () => shaft({ joints: [FIRST, { kind: 'single', centre: [-1282.5, 340, 631.125] }] }),
    [
      'stop shaft.joints.0.centre | Joint 1 stands at 64.8°, too much for a single joint | limit 30° | Use a double joint there, or move it so that its shafts run straighter. | common practice, no published source | {remedy:{kind:set,path:shaft.joints.0.kind,value:double,words:Use a double joint}}',
      'stop shaft.joints.1.centre | Joint 2 stands at 77.3°, too much for a single joint | limit 30° | Move it so that its shafts run straighter, or share the angle with one joint more. | common practice, no published source',
    ],
  ),
  said(
    'a double joint past its limit',
    'shaft-joint-angle',
    () => shaft({ joints: [FIRST, { kind: 'double', centre: [-1282.5, 340, 631.125] }] }),
    [
      'stop shaft.joints.0.centre | Joint 1 stands at 64.8°, too much for a single joint | limit 30° | Use a double joint there, or move it so that its shafts run straighter. | common practice, no published source | {remedy:{kind:set,path:shaft.joints.0.kind,value:double,words:Use a double joint}}',
      'stop shaft.joints.1.centre | Joint 2 stands at 77.3°, too much for a double joint | limit 70° | Move it so that its shafts run straighter, or share the angle with one joint more. | common practice, no published source',
    ],
  ),
  said(
    'a joint past its own limit',
    'shaft-joint-angle',
    () => shaft({ joints: [FIRST, { ...LAST, limit: 12.5 }] }),
    [
      'stop shaft.joints.1.centre | Joint 2 stands at 21.6°, too much for a single joint | limit 12.5° | Move it so that its shafts run straighter, or share the angle with one joint more. | this layout’s own figure for the joint',
    ],
  ),
  said(
    'a joint within its own limit',
    'shaft-joint-angle',
    () => shaft({ joints: [{ ...FIRST, limit: 22.5 }, LAST] }),
    [
      'info shaft.joints.1.centre | Joint 2 stands at 21.6°, nearest to its limit of the shaft’s joints | limit 30° |  | common practice, no published source',
    ],
  ),
  said(
    'double joints within their limit',
    'shaft-joint-angle',
    () =>
      shaft({
        joints: [
          { ...FIRST, kind: 'double' },
          { ...LAST, kind: 'double' },
        ],
      }),
    [
      'info shaft.joints.1.centre | Joint 2 stands at 21.6°, nearest to its limit of the shaft’s joints | limit 70° |  | common practice, no published source',
    ],
  ),
  said(
    'a shop’s own joints',
    'shaft-joint-angle',
    () => shaft({ joints: [{ ...FIRST, kind: 'double' }, LAST] }),
    [
      'stop shaft.joints.1.centre | Joint 2 stands at 21.6°, too much for a single joint | limit 18.5° | Move it so that its shafts run straighter, or share the angle with one joint more. | this shop’s own limit',
    ],
    { shop: { jointSingle: 18.5, jointDouble: 20.5 } },
  ),
  said('no shaft, no joints', 'shaft-joint-angle', () => car(), []),
  said('ends not described', 'shaft-ends', () => shaft(), [
    'info shaft.joints.0.centre | Of 4 places where a shaft’s end meets a joint, 4 are not described yet |  |  | common practice, no published source',
  ]),
  said(
    'one end not described',
    'shaft-ends',
    () =>
      shaft({
        column: { ...COLUMN, fit: { kind: 'double-d', diameter: 19.05, acrossFlats: 14.2 } },
        box: { ...BOX, fit: { kind: 'spline', ...SPLINE } },
        joints: [
          { ...FIRST, columnSide: DOUBLE_D_SIDE },
          { ...LAST, ...ENDS },
        ],
        shafts: [{ clock: -32.6, stock: STOCK }],
      }),
    [
      'info shaft.joints.0.centre | Of 4 places where a shaft’s end meets a joint, 1 is not described yet |  |  | common practice, no published source',
    ],
  ),
  said(
    'all ends fit',
    'shaft-ends',
    () =>
      shaft({
        column: { ...COLUMN, fit: { kind: 'double-d', diameter: 19.05, acrossFlats: 14.2 } },
        box: { ...BOX, fit: { kind: 'spline', ...SPLINE } },
        joints: [
          { ...FIRST, columnSide: DOUBLE_D_SIDE, boxSide: DOUBLE_D_SIDE },
          { ...LAST, ...ENDS },
        ],
        shafts: [{ clock: -32.6, stock: STOCK }],
      }),
    [
      'info shaft.joints.0.centre | Every end of the steering shaft fits the joint that takes it |  |  | common practice, no published source',
    ],
  ),
  said(
    'round bar in a double-D bore',
    'shaft-ends',
    () =>
      shaft({
        joints: [FIRST, { ...LAST, ...ENDS }],
        shafts: [{ clock: 0, stock: { kind: 'round', diameter: 19.05 } }],
      }),
    [
      'stop shaft.joints.1.centre | Shaft 1 and joint 2: a round end has no flats and does not go into a double-D bore |  | Take joint 2 with a round bore 3/4 in to weld, toward the column. Or: Take stock for shaft 1 with a double-D 0.752 in, 0.563 in across the flats end, toward the box. | common practice, no published source',
    ],
    {
      mm: [
        'Shaft 1 and joint 2: a round end has no flats and does not go into a double-D bore |  | Take joint 2 with a round bore 19.05 mm to weld, toward the column. Or: Take stock for shaft 1 with a double-D 19.1 mm, 14.3 mm across the flats end, toward the box.',
      ],
    },
  ),
  said(
    'a spline that differs',
    'shaft-ends',
    () =>
      shaft({
        box: { ...BOX, fit: { kind: 'spline', ...SPLINE, teeth: 35 } },
        joints: [FIRST, { ...LAST, ...ENDS }],
        shafts: [{ clock: 0, stock: STOCK }],
      }),
    [
      'stop shaft.joints.1.centre | Box and joint 2: 35 teeth do not go into a spline of 36 |  | Take joint 2 with a spline of 35 teeth on 0.771 in, 48/96 pitch, involute 45°, with pinch bolt, toward the box. Or: Put an adapter between: spline of 35 teeth on 0.771 in, 48/96 pitch, involute 45° to spline of 36 teeth on 0.771 in, 48/96 pitch, involute 45°, with pinch bolt. | common practice, no published source',
    ],
    {
      mm: [
        'Box and joint 2: 35 teeth do not go into a spline of 36 |  | Take joint 2 with a spline of 35 teeth on 19.58 mm, 48/96 pitch, involute 45°, with pinch bolt, toward the box. Or: Put an adapter between: spline of 35 teeth on 19.58 mm, 48/96 pitch, involute 45° to spline of 36 teeth on 19.58 mm, 48/96 pitch, involute 45°, with pinch bolt.',
      ],
    },
  ),
  said(
    'a joint too far out on the box’s input',
    'shaft-ends',
    () =>
      shaft({
        box: { ...BOX, fit: { kind: 'spline', ...SPLINE } },
        joints: [FIRST, { ...LAST, centre: [-1026, 410, 567], ...ENDS }],
        shafts: [{ clock: 0, stock: STOCK }],
      }),
    [
      'stop shaft.joints.1.centre | Box and joint 2: the box sits only 0.030 in deep; at least 0.771 in is wanted |  | Slide joint 2 0.741 in toward the box, or make the box’s end longer. | common practice, no published source | {remedy:{kind:move,id:shaft.joints.1.centre,to:[-999.582,410,560.3955]}}',
    ],
    {
      mm: [
        'Box and joint 2: the box sits only 0.77 mm deep; at least 19.58 mm is wanted |  | Slide joint 2 18.81 mm toward the box, or make the box’s end longer.',
      ],
    },
  ),
  said(
    'a joint too far out on the column',
    'shaft-ends',
    () =>
      shaft({
        column: { ...COLUMN, fit: { kind: 'double-d', diameter: 19.05, acrossFlats: 14.2 } },
        joints: [{ kind: 'single', centre: [-1250, 340, 720], columnSide: DOUBLE_D_SIDE }, LAST],
      }),
    [
      'stop shaft.joints.0.centre | Column and joint 1: the column does not reach into the joint; at least 0.817 in is wanted, or its fixing does not cross it |  | Slide joint 1 1.071 in toward the column, or make the column’s end longer. | common practice, no published source | {remedy:{kind:move,id:shaft.joints.0.centre,to:[-1284.3724,340,737.1862]}}',
    ],
    {
      mm: [
        'Column and joint 1: the column does not reach into the joint; at least 20.76 mm is wanted, or its fixing does not cross it |  | Slide joint 1 27.19 mm toward the column, or make the column’s end longer.',
      ],
    },
  ),
  said('no shaft, no ends', 'shaft-ends', () => car(), []),
  said(
    'clear of everything',
    'shaft-clearance',
    () => shaft(),
    [
      'info shaft.joints.0.centre | The steering shaft keeps clear of rails and of what is in the way | limit 1/2 in |  | common practice, no published source',
    ],
    { mm: ['The steering shaft keeps clear of rails and of what is in the way | limit 12.7 mm | '] },
  ),
  said(
    'hits a header',
    'shaft-clearance',
    () => shaft({}, { obstacles: [tube({})] }),
    [
      'stop shaft.joints.0.centre | Steering shaft 1 hits the header tube | limit 3/4 in, with more room beside an exhaust | Route the shaft around it with its joints, or move one of the two. | common practice, no published source',
    ],
    {
      mm: [
        'Steering shaft 1 hits the header tube | limit 19.05 mm, with more room beside an exhaust | Route the shaft around it with its joints, or move one of the two.',
      ],
    },
  ),
  said(
    'near to a header',
    'shaft-clearance',
    () => shaft({}, { obstacles: [tube({ from: [-1140, 330, 587], to: [-1140, 460, 597] })] }),
    [
      'attention shaft.joints.0.centre | Steering shaft 1 comes within 5/8 in of the header tube | limit 3/4 in, with more room beside an exhaust | Route the shaft around it with its joints, or move one of the two. | common practice, no published source',
    ],
    {
      mm: [
        'Steering shaft 1 comes within 16.2 mm of the header tube | limit 19.05 mm, with more room beside an exhaust | Route the shaft around it with its joints, or move one of the two.',
      ],
    },
  ),
  said(
    'near to the engine and a bracket, the nearer first',
    'shaft-clearance',
    () =>
      shaft(
        {},
        {
          obstacles: [
            tube({ name: 'Engine', role: 'engine', from: [-1140, 330, 605], to: [-1140, 460, 605] }),
            tube({ name: 'ECU', role: 'other', from: [-1280, 300, 690], to: [-1260, 400, 685], radius: 20 }),
          ],
        },
      ),
    [
      'attention shaft.joints.0.centre | Steering shaft 1 comes within 3/16 in of the engine | limit 1/2 in | Route the shaft around it with its joints, or move one of the two. | common practice, no published source',
      'attention shaft.joints.0.centre | Joint 1 of the steering shaft comes within 3/16 in of the ECU | limit 1/2 in | Route the shaft around it with its joints, or move one of the two. | common practice, no published source',
    ],
    {
      mm: [
        'Steering shaft 1 comes within 4.4 mm of the engine | limit 12.7 mm | Route the shaft around it with its joints, or move one of the two.',
        'Joint 1 of the steering shaft comes within 5.3 mm of the ECU | limit 12.7 mm | Route the shaft around it with its joints, or move one of the two.',
      ],
    },
  ),
  said(
    'all but touches the engine',
    'shaft-clearance',
    () =>
      shaft(
        {},
        {
          obstacles: [
            tube({ name: 'Engine', role: 'engine', from: [-1140, 330, 610.2], to: [-1140, 460, 610.2] }),
          ],
        },
      ),
    [
      'stop shaft.joints.0.centre | Steering shaft 1 hits the engine | limit 1/2 in | Route the shaft around it with its joints, or move one of the two. | common practice, no published source',
    ],
    {
      mm: [
        'Steering shaft 1 hits the engine | limit 12.7 mm | Route the shaft around it with its joints, or move one of the two.',
      ],
    },
  ),
  said(
    'near to the column’s end',
    'shaft-clearance',
    () =>
      shaft(
        { column: { end: [-1440, 340, 815], axis: [2, 0, -1] } },
        {
          obstacles: [
            tube({ name: 'Pedal bracket', role: 'other', from: [-1380, 300, 745], to: [-1380, 400, 745] }),
          ],
        },
      ),
    [
      'attention shaft.joints.0.centre | The column’s end comes within 3/16 in of the pedal bracket | limit 1/2 in | Route the shaft around it with its joints, or move one of the two. | common practice, no published source',
    ],
    {
      mm: [
        'The column’s end comes within 4.3 mm of the pedal bracket | limit 12.7 mm | Route the shaft around it with its joints, or move one of the two.',
      ],
    },
  ),
  said(
    'near to the box’s input, a thick one',
    'shaft-clearance',
    () =>
      shaft(
        {
          box: {
            end: [-886, 410, 532],
            axis: [4, 0, -1],
            fit: { kind: 'spline', ...SPLINE, diameter: 25.4 },
          },
        },
        {
          obstacles: [
            tube({
              name: 'Bracket',
              role: 'other',
              from: [-906, 330, 497],
              to: [-906, 460, 497],
              radius: 15,
            }),
          ],
        },
      ),
    [
      'attention shaft.joints.1.centre | The box’s input comes within 7/16 in of the bracket | limit 1/2 in | Route the shaft around it with its joints, or move one of the two. | common practice, no published source',
    ],
    {
      mm: [
        'The box’s input comes within 11.1 mm of the bracket | limit 12.7 mm | Route the shaft around it with its joints, or move one of the two.',
      ],
    },
  ),
  said(
    'near to the box end',
    'shaft-clearance',
    () =>
      shaft(
        {},
        {
          obstacles: [
            tube({
              name: 'Bracket',
              role: 'other',
              from: [-988, 330, 519],
              to: [-988, 460, 519],
              radius: 14,
            }),
          ],
        },
      ),
    [
      'attention shaft.joints.1.centre | Joint 2 of the steering shaft comes within 5/16 in of the bracket | limit 1/2 in | Route the shaft around it with its joints, or move one of the two. | common practice, no published source',
    ],
    {
      mm: [
        'Joint 2 of the steering shaft comes within 8.0 mm of the bracket | limit 12.7 mm | Route the shaft around it with its joints, or move one of the two.',
      ],
    },
  ),
  said(
    'a thick stock comes nearer',
    'shaft-clearance',
    () =>
      shaft(
        { shafts: [{ clock: 0, stock: { kind: 'round', diameter: 25.4 } }] },
        { obstacles: [tube({ role: 'other', from: [-1140, 330, 600], to: [-1140, 460, 600] })] },
      ),
    [
      'attention shaft.joints.0.centre | Steering shaft 1 comes within 3/16 in of the header tube | limit 1/2 in | Route the shaft around it with its joints, or move one of the two. | common practice, no published source',
    ],
    {
      mm: [
        'Steering shaft 1 comes within 5.5 mm of the header tube | limit 12.7 mm | Route the shaft around it with its joints, or move one of the two.',
      ],
    },
  ),
  said(
    'a shop’s own gap',
    'shaft-clearance',
    () => shaft(),
    [
      'info shaft.joints.0.centre | The steering shaft keeps clear of rails and of what is in the way | limit 3/4 in |  | this shop’s own limit',
    ],
    {
      mm: ['The steering shaft keeps clear of rails and of what is in the way | limit 19.05 mm | '],
      shop: { clearanceMoving: 19.05 },
    },
  ),
  said('no shaft, nothing hit', 'shaft-clearance', () => car(), []),
  said('two joints need no support', 'shaft-support', () => shaft(), []),
  said(
    'three joints and no support',
    'shaft-support',
    () => shaft({ joints: [FIRST, MIDDLE, LAST], shafts: PIECES }),
    [
      'attention shaft.joints.1.centre | Three or more joints leave a shaft loose: one support bearing called for, none there |  | Put a support bearing on shaft 2, beside joint 2. | common practice, no published source | {remedy:{kind:set,path:shaft.supports,value:[{shaft:1,at:0.3639}],words:Put a support bearing there}}',
    ],
  ),
  said(
    'three joints and a support',
    'shaft-support',
    () => shaft({ joints: [FIRST, MIDDLE, LAST], shafts: PIECES, supports: [{ shaft: 0, at: 0.8 }] }),
    [
      'info shaft.joints.1.centre | Three or more joints leave a shaft loose: one support bearing called for, one there |  |  | common practice, no published source',
    ],
  ),
  said(
    'four joints and one support of two',
    'shaft-support',
    () =>
      shaft({
        joints: [
          FIRST,
          { kind: 'single', centre: [-1190, 360, 690] },
          { kind: 'single', centre: [-1100, 380, 620] },
          LAST,
        ],
        shafts: [{ clock: 0 }, { clock: 0 }, { clock: 0 }],
        supports: [{ shaft: 1, at: 0.2 }],
      }),
    [
      'attention shaft.joints.1.centre | Three or more joints leave a shaft loose: two support bearings called for, one there |  | Put a support bearing on shaft 3, in its middle. | common practice, no published source | {remedy:{kind:set,path:shaft.supports,value:[{shaft:1,at:0.2},{shaft:2,at:0.5}],words:Put a support bearing there}}',
    ],
  ),
  said(
    'four joints and no support',
    'shaft-support',
    () =>
      shaft({
        joints: [
          FIRST,
          { kind: 'single', centre: [-1190, 360, 690] },
          { kind: 'single', centre: [-1100, 380, 620] },
          LAST,
        ],
        shafts: [{ clock: 0 }, { clock: 0 }, { clock: 0 }],
      }),
    [
      'attention shaft.joints.1.centre | Three or more joints leave a shaft loose: two support bearings called for, none there |  | Put support bearings on shaft 2, in its middle, and on shaft 3, in its middle. | common practice, no published source | {remedy:{kind:set,path:shaft.supports,value:[{shaft:1,at:0.5},{shaft:2,at:0.5}],words:Put a support bearing there}}',
    ],
  ),
  said('a double joint', 'shaft-support', () => shaft({ joints: [FIRST, { ...LAST, kind: 'double' }] }), [
    'attention shaft.joints.1.centre | A double joint does not hold its shaft: one support bearing called for, none there |  | Put a support bearing on shaft 1, beside joint 2. | common practice, no published source | {remedy:{kind:set,path:shaft.supports,value:[{shaft:0,at:0.8106}],words:Put a support bearing there}}',
  ]),
  said(
    'a double joint in the middle',
    'shaft-support',
    () => shaft({ joints: [FIRST, { ...MIDDLE, kind: 'double' }, LAST], shafts: PIECES }),
    [
      'attention shaft.joints.1.centre | A double joint does not hold its shaft: two support bearings called for, none there |  | Put support bearings on shaft 2, beside joint 2, and on shaft 1, beside joint 2. | common practice, no published source | {remedy:{kind:set,path:shaft.supports,value:[{shaft:1,at:0.3639},{shaft:0,at:0.6071}],words:Put a support bearing there}}',
    ],
  ),
  said('no shaft, no support', 'shaft-support', () => car(), []),
  said('short enough', 'shaft-span', () => shaft(), []),
  said(
    'long, no bearing',
    'shaft-span',
    () => shaft(FAR),
    [
      'attention shaft.joints.0.centre | Shaft 1 runs 37 11/16 in without a bearing | limit 30 in | Put a support bearing in the middle of that stretch. | common practice, no published source | {remedy:{kind:set,path:shaft.supports,value:[{shaft:0,at:0.5}],words:Put a support bearing there}}',
    ],
    {
      mm: [
        'Shaft 1 runs 956.9 mm without a bearing | limit 762 mm | Put a support bearing in the middle of that stretch.',
      ],
    },
  ),
  said(
    'very long, no bearing',
    'shaft-span',
    () => shaft(FARTHER),
    [
      'attention shaft.joints.0.centre | Shaft 1 runs 81 5/8 in without a bearing | limit 30 in | Put two support bearings along that stretch, evenly. | common practice, no published source | {remedy:{kind:set,path:shaft.supports,value:[{shaft:0,at:0.3333},{shaft:0,at:0.6667}],words:Put a support bearing there}}',
    ],
    {
      mm: [
        'Shaft 1 runs 2072.6 mm without a bearing | limit 762 mm | Put two support bearings along that stretch, evenly.',
      ],
    },
  ),
  said(
    'long, a bearing near one end',
    'shaft-span',
    () =>
      shaft({
        ...FARTHER,
        supports: [
          { shaft: 0, at: 0.9 },
          { shaft: 0, at: 0.2 },
        ],
      }),
    [
      'attention shaft.joints.0.centre | Shaft 1 runs 57 1/8 in without a bearing of its 81 5/8 in | limit 30 in | Put a support bearing in the middle of that stretch. | common practice, no published source | {remedy:{kind:set,path:shaft.supports,value:[{shaft:0,at:0.9},{shaft:0,at:0.2},{shaft:0,at:0.55}],words:Put a support bearing there}}',
    ],
    {
      mm: [
        'Shaft 1 runs 1450.8 mm without a bearing of its 2072.6 mm | limit 762 mm | Put a support bearing in the middle of that stretch.',
      ],
    },
  ),
  said(
    'long, a bearing in the middle',
    'shaft-span',
    () => shaft({ ...FAR, supports: [{ shaft: 0, at: 0.5 }] }),
    [],
  ),
  said(
    'a shop’s own span',
    'shaft-span',
    () => shaft(),
    [
      'attention shaft.joints.0.centre | Shaft 1 runs 13 3/16 in without a bearing | limit 10 in | Put a support bearing in the middle of that stretch. | this shop’s own limit | {remedy:{kind:set,path:shaft.supports,value:[{shaft:0,at:0.5}],words:Put a support bearing there}}',
    ],
    {
      mm: [
        'Shaft 1 runs 335.4 mm without a bearing | limit 254 mm | Put a support bearing in the middle of that stretch.',
      ],
      shop: { shaftSpan: 254 },
    },
  ),
  said('no shaft, no span', 'shaft-span', () => car(), []),
  said('clocked well', 'shaft-clocking', () => shaft(), [
    'info shaft.joints.0.centre | The box’s input swings 2.6° over a turn of the handwheel |  |  | common practice, no published source',
  ]),
  said('clocked badly', 'shaft-clocking', () => shaft({ shafts: [{ clock: 57 }] }), [
    'attention shaft.joints.0.centre | Shaft 1 is clocked 90° off its best: the box swings 5.7° over a turn, where 2.6° would be left | noticed from 20° off | Set the best clocking: 2.6° of swing. | common practice, no published source | {remedy:{kind:set,path:shaft.shafts,value:[{clock:-32.6}],words:Set the best clocking}}',
  ]),
  said(
    'one of two clocked badly',
    'shaft-clocking',
    () => shaft({ joints: [FIRST, MIDDLE, LAST], shafts: [{ clock: -56.2 }, { clock: 20 }] }),
    [
      'attention shaft.joints.0.centre | Shaft 1 is clocked 85° off its best: the box swings 6.1° over a turn, where 4.2° would be left | noticed from 20° off | Set the best clocking: 4.2° of swing. | common practice, no published source | {remedy:{kind:set,path:shaft.shafts,value:[{clock:28.6},{clock:11.6}],words:Set the best clocking}}',
    ],
  ),
  said(
    'folded',
    'shaft-clocking',
    () =>
      shaft({
        box: { end: [-1282.5, 340, 615.125], axis: [2, 0, 1] },
        joints: [FIRST, { kind: 'single', centre: [-1280, 440, 735] }],
      }),
    [
      'stop shaft.joints.0.centre | Joint 1 is folded so far that the shaft does not turn |  | Move it so that its shafts run straighter. | kinematics of the joint: at a right angle it passes nothing on',
    ],
  ),
  said(
    'straight',
    'shaft-clocking',
    () =>
      shaft({
        column: { end: [-1296, 340, 743], axis: [2, 0, -1] },
        box: { end: [-984, 340, 587], axis: [2, 0, -1] },
        joints: [FIRST, { kind: 'single', centre: [-1000, 340, 595] }],
      }),
    [
      'info shaft.joints.0.centre | The box’s input turns evenly with the handwheel |  |  | common practice, no published source',
    ],
  ),
  said('no shaft, no clocking', 'shaft-clocking', () => car(), []),
  said('on their axes', 'shaft-axis', () => shaft(), []),
  said(
    'the first joint off its axis',
    'shaft-axis',
    () => shaft({ joints: [{ kind: 'single', centre: [-1280, 352, 735] }, LAST] }),
    [
      'attention shaft.joints.0.centre | Joint 1 lies 1/2 in off the column’s axis | limit 0.020 in | Bring joint 1 back onto the axis. | geometry: the joint sits on that shaft | {remedy:{kind:move,id:shaft.joints.0.centre,to:[-1280,340,735]}}',
    ],
    { mm: ['Joint 1 lies 12.0 mm off the column’s axis | limit 0.5 mm | Bring joint 1 back onto the axis.'] },
  ),
  said(
    'both off their axes',
    'shaft-axis',
    () =>
      shaft({
        joints: [
          { kind: 'single', centre: [-1280, 340.6, 735] },
          { kind: 'single', centre: [-1002, 404, 561] },
        ],
      }),
    [
      'attention shaft.joints.0.centre | Joint 1 lies 0.024 in off the column’s axis | limit 0.020 in | Bring joint 1 back onto the axis. | geometry: the joint sits on that shaft | {remedy:{kind:move,id:shaft.joints.0.centre,to:[-1280,340,735]}}',
      'attention shaft.joints.1.centre | Joint 2 lies 1/4 in off the axis of the box’s input | limit 0.020 in | Bring joint 2 back onto the axis. | geometry: the joint sits on that shaft | {remedy:{kind:move,id:shaft.joints.1.centre,to:[-1002,410,561]}}',
    ],
    {
      mm: [
        'Joint 1 lies 0.6 mm off the column’s axis | limit 0.5 mm | Bring joint 1 back onto the axis.',
        'Joint 2 lies 6.0 mm off the axis of the box’s input | limit 0.5 mm | Bring joint 2 back onto the axis.',
      ],
    },
  ),
  said(
    'half a millimetre off',
    'shaft-axis',
    () => shaft({ joints: [{ kind: 'single', centre: [-1280, 340.5, 735] }, LAST] }),
    [],
  ),
  said(
    'a lone joint off the box’s axis',
    'shaft-axis',
    () => shaft({ joints: [FIRST], shafts: [] }),
    [
      'attention shaft.joints.0.centre | Joint 1 lies 4 7/8 in off the axis of the box’s input | limit 0.020 in | One joint needs axes that meet: move the box or the column, or take two joints. | geometry: the joint sits on that shaft',
    ],
    {
      mm: [
        'Joint 1 lies 123.2 mm off the axis of the box’s input | limit 0.5 mm | One joint needs axes that meet: move the box or the column, or take two joints.',
      ],
    },
  ),
  said('no shaft, no axis', 'shaft-axis', () => car(), []),
  said(
    'an obstacle far off',
    'shaft-clearance',
    () => shaft({}, { obstacles: [tube({ from: [-1140, -300, 300], to: [-1140, -460, 300] })] }),
    [
      'info shaft.joints.0.centre | The steering shaft keeps clear of rails and of what is in the way | limit 1/2 in |  | common practice, no published source',
    ],
    { mm: ['The steering shaft keeps clear of rails and of what is in the way | limit 12.7 mm | '] },
  ),
  said(
    'two of one name: the nearer',
    'shaft-clearance',
    () =>
      shaft(
        {},
        {
          obstacles: [
            tube({ role: 'other', from: [-1140, 330, 600], to: [-1140, 460, 600] }),
            tube({ role: 'other', from: [-1140, 330, 604], to: [-1140, 460, 604] }),
          ],
        },
      ),
    [
      'attention shaft.joints.0.centre | Steering shaft 1 comes within 3/16 in of the header tube | limit 1/2 in | Route the shaft around it with its joints, or move one of the two. | common practice, no published source',
    ],
    {
      mm: [
        'Steering shaft 1 comes within 5.2 mm of the header tube | limit 12.7 mm | Route the shaft around it with its joints, or move one of the two.',
      ],
    },
  ),
  said(
    'a lone joint off the column’s axis',
    'shaft-axis',
    () => shaft({ joints: [{ kind: 'single', centre: [-1002, 410, 561] }], shafts: [] }),
    [
      'attention shaft.joints.0.centre | Joint 1 lies 3 in off the column’s axis | limit 0.020 in | Bring joint 1 back onto the axis. | geometry: the joint sits on that shaft | {remedy:{kind:move,id:shaft.joints.0.centre,to:[-988,340,589]}}',
    ],
    { mm: ['Joint 1 lies 76.7 mm off the column’s axis | limit 0.5 mm | Bring joint 1 back onto the axis.'] },
  ),
  said(
    'a lone joint past its limit',
    'shaft-joint-angle',
    () =>
      shaft({
        joints: [{ kind: 'single', centre: [-1280, 340, 735] }],
        shafts: [],
        box: { end: [-986, 410, 557], axis: [1, 1, 0] },
      }),
    [
      'stop shaft.joints.0.centre | Joint 1 stands at 50.8°, too much for a single joint | limit 30° | Use a double joint there, or move it so that its shafts run straighter. | common practice, no published source | {remedy:{kind:set,path:shaft.joints.0.kind,value:double,words:Use a double joint}}',
    ],
  ),
  said(
    'a lone double joint',
    'shaft-support',
    () => shaft({ joints: [{ ...FIRST, kind: 'double' }], shafts: [] }),
    [
      'info shaft.joints.0.centre | A double joint does not hold its shaft: the column’s own bearing has to stand close to it |  |  | common practice, no published source',
    ],
  ),
  said(
    'three joints, a support too many',
    'shaft-support',
    () =>
      shaft({
        joints: [FIRST, MIDDLE, LAST],
        shafts: PIECES,
        supports: [
          { shaft: 0, at: 0.8 },
          { shaft: 1, at: 0.3 },
        ],
      }),
    [
      'info shaft.joints.1.centre | Three or more joints leave a shaft loose: one support bearing called for, two there |  |  | common practice, no published source',
    ],
  ),
  said(
    'the second of two shafts runs long',
    'shaft-span',
    () =>
      shaft({
        column: { end: [-2896, 340, 1443], axis: [2, 0, -1] },
        joints: [
          { kind: 'single', centre: [-2880, 340, 1435] },
          { kind: 'single', centre: [-2500, 340, 1245] },
          LAST,
        ],
        shafts: [{ clock: 0 }, { clock: 0 }],
        supports: [{ shaft: 0, at: 0.5 }],
      }),
    [
      'attention shaft.joints.1.centre | Shaft 2 runs 64 7/8 in without a bearing | limit 30 in | Put two support bearings along that stretch, evenly. | common practice, no published source | {remedy:{kind:set,path:shaft.supports,value:[{shaft:0,at:0.5},{shaft:1,at:0.3333},{shaft:1,at:0.6667}],words:Put a support bearing there}}',
    ],
    {
      mm: [
        'Shaft 2 runs 1648.3 mm without a bearing | limit 762 mm | Put two support bearings along that stretch, evenly.',
      ],
    },
  ),
  said(
    'a spline that differs, and sits too shallow',
    'shaft-ends',
    () =>
      shaft({
        box: { ...BOX, fit: { kind: 'spline', ...SPLINE, teeth: 35 } },
        joints: [FIRST, { ...LAST, centre: [-1026, 410, 567], ...ENDS }],
        shafts: [{ clock: 0, stock: STOCK }],
      }),
    [
      'stop shaft.joints.1.centre | Box and joint 2: 35 teeth do not go into a spline of 36 |  | Take joint 2 with a spline of 35 teeth on 0.771 in, 48/96 pitch, involute 45°, with pinch bolt, toward the box. Or: Put an adapter between: spline of 35 teeth on 0.771 in, 48/96 pitch, involute 45° to spline of 36 teeth on 0.771 in, 48/96 pitch, involute 45°, with pinch bolt. | common practice, no published source',
    ],
    {
      mm: [
        'Box and joint 2: 35 teeth do not go into a spline of 36 |  | Take joint 2 with a spline of 35 teeth on 19.58 mm, 48/96 pitch, involute 45°, with pinch bolt, toward the box. Or: Put an adapter between: spline of 35 teeth on 19.58 mm, 48/96 pitch, involute 45° to spline of 36 teeth on 19.58 mm, 48/96 pitch, involute 45°, with pinch bolt.',
      ],
    },
  ),
  said(
    'a double-D a little small goes in',
    'shaft-ends',
    () =>
      shaft({
        joints: [FIRST, { ...LAST, ...ENDS }],
        shafts: [{ clock: 0, stock: { kind: 'double-d', diameter: 18.9, acrossFlats: 14.1 } }],
      }),
    [
      'info shaft.joints.0.centre | Of 4 places where a shaft’s end meets a joint, 3 are not described yet |  |  | common practice, no published source',
    ],
  ),
  said('clocked nearly well', 'shaft-clocking', () => shaft({ shafts: [{ clock: -14 }] }), [
    'info shaft.joints.0.centre | The box’s input swings 3.1° over a turn of the handwheel |  |  | common practice, no published source',
  ]),
  said('clocked just noticed', 'shaft-clocking', () => shaft({ shafts: [{ clock: -11 }] }), [
    'attention shaft.joints.0.centre | Shaft 1 is clocked 22° off its best: the box swings 3.2° over a turn, where 2.6° would be left | noticed from 20° off | Set the best clocking: 2.6° of swing. | common practice, no published source | {remedy:{kind:set,path:shaft.shafts,value:[{clock:-32.6}],words:Set the best clocking}}',
  ]),
  said(
    'a joint within a shop’s double limit',
    'shaft-joint-angle',
    () => shaft({ joints: [{ ...FIRST, kind: 'double' }, LAST] }),
    [
      'info shaft.joints.1.centre | Joint 2 stands at 21.6°, nearest to its limit of the shaft’s joints | limit 22.5° |  | this shop’s own limit',
    ],
    { shop: { jointSingle: 22.5, jointDouble: 21.5 } },
  ),
  said(
    'very long, a bearing near one end: two more, evenly',
    'shaft-span',
    () => shaft({ ...FARTHER, supports: [{ shaft: 0, at: 0.1 }] }),
    [
      'attention shaft.joints.0.centre | Shaft 1 runs 73 7/16 in without a bearing of its 81 5/8 in | limit 30 in | Put two support bearings along that stretch, evenly. | common practice, no published source | {remedy:{kind:set,path:shaft.supports,value:[{shaft:0,at:0.1},{shaft:0,at:0.4},{shaft:0,at:0.7}],words:Put a support bearing there}}',
    ],
    {
      mm: [
        'Shaft 1 runs 1865.3 mm without a bearing of its 2072.6 mm | limit 762 mm | Put two support bearings along that stretch, evenly.',
      ],
    },
  ),
];

describe('what is said of the steering shaft', () => {
  test.each(SAID)('$label', (one) => {
    expect(heard(one)).toEqual({ inches: one.inches, mm: one.mm });
  });
});

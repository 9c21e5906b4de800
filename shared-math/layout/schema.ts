import { z } from 'zod';
import type { AxlePoint, FramePoint, PitmanPoint, RockerPoint, SpindlePoint } from '../geometry/points.ts';
import { brakingSchema } from './braking-schema.ts';
import { linksSchema } from './links-schema.ts';
import { coordinate, direction, length, notBlank, point, pointOf } from './measures.ts';
import { photoSchema } from './photo-schema.ts';
import { rideSchema } from './ride-schema.ts';
import { shaftSchema } from './shaft-schema.ts';
import { UNDERLAYS_MAX, underlaySchema } from './underlay-schema.ts';
import { LAYOUT_VERSION } from './version.ts';

/*
 * What `describe` says of a field is what the command `schema` publishes: what it is, its unit, what its sign means, what is
 * taken where it is left out. tests/unit/layout-json-schema.test.ts asks for it of every field.
 */

const onFrame = pointOf<FramePoint>();
const onAxle = pointOf<AxlePoint>();
const onSpindle = pointOf<SpindlePoint>();

const angle = z.number().min(-45).max(45);

/** A right side is spelled out, or is the left side with y negated. */
const right = <Shape extends z.ZodType>(side: Shape) =>
  z
    .union([z.literal('mirror'), side])
    .describe('"mirror": the left side with y negated; or the right side spelled out.');

const car = z.strictObject({
  wheelbase: length.describe('mm between the front and the rear axle.'),
  frontAxleLoad: z.number().positive().max(200_000).describe('N on the ground under both front tyres.'),
  tyreRadius: length.describe('mm from the wheel centre to the ground, the car standing on it.'),
  tyreWidth: length.describe('mm across the tyre.'),
  handwheelRadius: length.describe('mm from the middle of the handwheel to its rim.'),
  noseAhead: length
    .describe(
      "mm that the car's nose stands ahead of the front axle. Where this or its width is absent, the tyres are taken to be foremost.",
    )
    .optional(),
  noseWidth: length.describe('mm across the nose there.').optional(),
  driverSide: z
    .enum(['left', 'right'])
    .describe(
      'The side that the driver sits on. Absent, nobody said: it is taken to be the side that the steering is drawn on.',
    )
    .optional(),
});

const axleSide = z.strictObject({
  kingpinTop: onAxle.describe("The kingpin's upper end, carried by the axle: [x, y, z], mm."),
  kingpinBottom: onAxle.describe("The kingpin's lower end, carried by the axle: [x, y, z], mm."),
  wheelCentre: onSpindle.describe(
    'The middle of the wheel, carried by the spindle: [x, y, z], mm. It stands one tyre radius above the ground.',
  ),
  camber: angle.describe('Degrees, wheels straight ahead; positive, the top of the wheel leans outward.'),
  toeIn: angle.describe("Degrees of this wheel; positive, its front points toward the car's centre plane."),
  tieRodBall: onSpindle.describe(
    "The middle of the tie rod's ball on this side, carried by the spindle: [x, y, z], mm.",
  ),
});

const axle = z.strictObject({
  beam: z.enum(['i-beam', 'tube']).describe('An I-beam twists freely between its halves, a tube not at all.'),
  left: axleSide.describe('The half at positive y.'),
  right: right(axleSide),
});

const onFrameSide = 'carried by the frame: [x, y, z], mm.';
const onAxleSide = 'carried by the axle: [x, y, z], mm.';

const rod = z.strictObject({
  framePivot: onFrame.describe(`The ball at the rod's frame end, ${onFrameSide}`),
});
const bar = z.strictObject({
  axle: onAxle.describe(`The ball at the bar's axle end, ${onAxleSide}`),
  frame: onFrame.describe(`The ball at the bar's frame end, ${onFrameSide}`),
});
const barPair = z.strictObject({
  upper: bar.describe('The upper of the two bars of this side.'),
  lower: bar.describe('The lower of the two bars of this side.'),
});
const leaf = z.strictObject({
  fixedEye: onFrame.describe(`The middle of the eye that is bolted to the frame, ${onFrameSide}`),
  seat: onAxle.describe(`Where the leaf is clamped, ${onAxleSide}`),
  shackleEye: onFrame.describe(`The middle of the eye that hangs in the shackle, as drawn: [x, y, z], mm.`),
});

const quarter = z.strictObject({
  butt: onFrame.describe(`The thick end of the spring, ${onFrameSide}`),
  clamp: onFrame.describe(
    `Where the leaves leave their clamp, on the main leaf's middle line, which runs straight from butt to here, ${onFrameSide}`,
  ),
  eye: onAxle.describe(
    `The middle of the eye on the axle, or where the spring's end slides on it, ${onAxleSide}`,
  ),
  rod: bar.describe('The radius rod above or below the spring.'),
});

const location = z.discriminatedUnion('kind', [
  z
    .strictObject({ kind: z.literal('hairpins'), left: rod.describe('The left rod.'), right: right(rod) })
    .describe('A rod each side, rigid with the axle, on one ball at the frame.'),
  z
    .strictObject({ kind: z.literal('split-rods'), left: rod.describe('The left rod.'), right: right(rod) })
    .describe(
      'A wishbone cut apart: one stout rod each side, rigid with the axle, on one ball at the frame. It moves as hairpins do.',
    ),
  z
    .strictObject({
      kind: z.literal('wishbone'),
      framePivot: onFrame.describe(`The ball that both rods meet in, ${onFrameSide}`),
    })
    .describe('Rods rigid with the axle, joined to one ball on the frame.'),
  z
    .strictObject({
      kind: z.literal('four-bar'),
      left: barPair.describe('The bars of the left side.'),
      right: right(barPair),
    })
    .describe('Two bars each side with balls at both ends.'),
  z
    .strictObject({
      kind: z.literal('parallel-leaf'),
      left: leaf.describe('The left leaf.'),
      right: right(leaf),
    })
    .describe('A leaf each side along the rail.'),
  z
    .strictObject({
      kind: z.literal('quarter-elliptic'),
      eyes: z
        .enum(['pinned', 'sliding'])
        .describe(
          'Pinned, the eye is bolted to the axle and holds it fore and aft, and the rod has a ball at either end. Sliding, the spring carries load alone, and the rod is rigid with the axle.',
        ),
      left: quarter.describe('The left spring and its rod.'),
      right: right(quarter),
    })
    .describe('Half a leaf spring each side, its thick end clamped to the frame, with a radius rod.'),
]);

const wattBar = z.strictObject({
  rocker: pointOf<RockerPoint>().describe("The bar's end on the rocker, as drawn: [x, y, z], mm."),
  end: point.describe(
    'Its other end, carried by the frame if the rocker is on the axle, else by the axle: [x, y, z], mm.',
  ),
});

const lateral = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.literal('bar'),
      axle: onAxle.describe(`The ball at the bar's axle end, ${onAxleSide}`),
      frame: onFrame.describe(`The ball at the bar's frame end, ${onFrameSide}`),
    })
    .describe('A bar across the car.'),
  z
    .strictObject({
      kind: z.literal('spring'),
      height: coordinate
        .describe(
          'mm above the ground at which the spring holds the axle sideways. Absent, that of the wheel centres.',
        )
        .optional(),
    })
    .describe('The spring itself keeps the axle centred.'),
  z
    .strictObject({
      kind: z.literal('fixed-spring'),
      clamp: onFrame.describe(
        `Where the half of the spring that ends in the fixed eye leaves its clamp on the frame, on the main leaf's middle line; the leaf leaves it level, ${onFrameSide}`,
      ),
      eye: onAxle.describe(
        `The middle of the eye that is bolted to the axle without a shackle, ${onAxleSide}`,
      ),
    })
    .describe(
      'A spring across the car, clamped to the frame in its middle: one eye bolted to the axle, the other on a shackle.',
    ),
  z
    .strictObject({
      kind: z.literal('watt'),
      rockerOn: z
        .enum(['axle', 'frame'])
        .describe(
          'What the bolt of the rocker is held by; the other ends of both bars are held by the other of the two.',
        ),
      pivot: point.describe(
        "The middle of the rocker's bolt, which runs fore and aft; carried by what rockerOn says: [x, y, z], mm.",
      ),
      upper: wattBar.describe("The bar from the rocker's upper end, to one side of the car."),
      lower: wattBar.describe("The bar from the rocker's lower end, to the other side."),
    })
    .describe('Two bars across the car from the ends of a rocker: Watt’s linkage.'),
]);

const box = z.strictObject({
  sectorCentre: onFrame.describe(`The middle of the box on the line of its sector shaft, ${onFrameSide}`),
  sectorAxis: direction.describe(
    'The direction of the sector shaft, [x, y, z], any length but 0. It points so that a handwheel turned to the left turns the arm right-hand about it.',
  ),
  pitmanBall: pointOf<PitmanPoint>().describe(
    'The middle of the ball on the pitman arm, straight ahead: [x, y, z], mm.',
  ),
  ratio: z.number().positive().max(100).describe('Handwheel angle over sector angle.'),
  sectorTravel: z
    .number()
    .positive()
    .max(180)
    .describe('Degrees that the sector turns from straight ahead to either side.'),
  inputAngle: z
    .number()
    .min(30)
    .max(90)
    .describe('Degrees between the lines of the input and of the sector shaft. Absent, square to it.')
    .optional(),
  greatestOutput: z
    .number()
    .positive()
    .max(20_000)
    .describe(
      'N·m at the sector shaft: the most that the box gives with assistance that works, by its maker. Absent, not known.',
    )
    .optional(),
  assist: z.enum(['manual', 'power']).describe('Whether the box is power-assisted.'),
});

const steering = z.strictObject({
  dragLinkTo: z.enum(['left', 'right']).describe('The side whose wheel the drag link steers.'),
  dragLinkBall: onSpindle.describe(
    "The middle of the drag link's ball on the steering arm, carried by that side's spindle: [x, y, z], mm.",
  ),
  box: box.describe('The steering box and its pitman arm.'),
  stopAngle: z
    .number()
    .positive()
    .max(80)
    .describe(
      "Degrees of either wheel from straight ahead at which the axle's stops end the turn. Absent, there are none.",
    )
    .optional(),
});

const travel = z.strictObject({
  bump: z.number().min(0).max(1000).describe('mm that the axle rises from ride height.'),
  /** As the document has called droop since its first version; a damper's rebound is its own. */
  rebound: z.number().min(0).max(1000).describe('mm that the axle falls from ride height: its droop.'),
  roll: z.number().min(0).max(30).describe('Degrees that the axle rolls either way.'),
});

/** A frame rail: the middle line of its section from front to back, and the section's size. */
const rail = z.strictObject({
  name: z.string().max(120).describe('What a builder calls it.'),
  path: z.array(point).min(2).max(50).describe('The middle line of its section from front to back.'),
  height: length.describe('mm of the section, up and down.'),
  width: length.describe('mm of the section, across.'),
  mirrored: z
    .boolean()
    .describe("True where a second one stands on the other side of the car's centre plane."),
});

const obstacleFacts = {
  name: z
    .string()
    .trim()
    .min(1)
    .max(120)
    .meta({ ...notBlank, description: 'What a builder calls it.' }),
  role: z
    .enum(['engine', 'sump', 'header', 'crossmember', 'radiator', 'other'])
    .describe('What it is to a builder. A link whose frame end stands on a crossmember is bolted to it.'),
  mirrored: z
    .boolean()
    .describe("True where a second one stands on the other side of the car's centre plane."),
};

const ofMiddleLine = {
  from: point.describe('One end of the middle line, fixed to the frame: [x, y, z], mm.'),
  to: point.describe('The other end of the middle line, fixed to the frame: [x, y, z], mm.'),
};

/** An obstacle: fixed to the frame. */
const obstacle = z.discriminatedUnion('kind', [
  z.strictObject({
    ...obstacleFacts,
    kind: z.literal('box'),
    centre: point.describe('The middle of the box, fixed to the frame: [x, y, z], mm.'),
    size: z
      .tuple([length, length, length])
      .readonly()
      .describe('mm along the car, across it and up, before it is turned.'),
    turn: z
      .number()
      .min(-180)
      .max(180)
      .describe('Degrees about the upright axis, counter-clockwise seen from above. Absent, 0.')
      .optional(),
  }),
  z.strictObject({
    ...obstacleFacts,
    kind: z.literal('cylinder'),
    ...ofMiddleLine,
    radius: length.describe('mm; its ends are flat.'),
  }),
  z.strictObject({
    ...obstacleFacts,
    kind: z.literal('capsule'),
    ...ofMiddleLine,
    radius: length.describe('mm; its ends are half balls about the ends of the middle line.'),
  }),
]);

const diameter = (of: string, usual = 22) =>
  z.number().positive().max(200).describe(`mm outside of ${of}. Absent, the usual ${usual} mm.`).optional();

/** Outside diameters of the tubes, where they are not the usual ones. */
const diameters = z.strictObject({
  dragLink: diameter('the drag link'),
  tieRod: diameter('the tie rod'),
  lateralBar: diameter('the lateral bar'),
  rods: diameter('hairpins, radius rods, wishbone rods or the four bars (hairpins 19 mm, radius rods 32 mm)'),
});

/** Directions of ball studs, by the hardpoint that they belong to, where they are not the usual ones. */
const studs = z.record(
  z.string().max(80),
  direction.describe('The direction of the stud, [x, y, z], any length but 0.'),
);

/** Where points' places come from, by hardpoint; absent, a guess. A mirrored pair has one, under either id. */
const origins = z.record(
  z.string().max(80),
  z.enum(['guess', 'plan', 'tape', 'photo']).describe('Where this point comes from.'),
);

/** What was done to the frame's height since it was first drawn; all points are those of the car as it sits now. */
const sits = z.strictObject({
  front: z
    .number()
    .min(-1000)
    .max(1000)
    .describe('mm that the frame sits lower over the front axle than it was first drawn; below 0 higher.'),
  rear: z
    .number()
    .min(-1000)
    .max(1000)
    .describe('mm that the frame sits lower over the rear axle than it was first drawn; below 0 higher.'),
});

export const layoutSchema = z.strictObject({
  format: z.literal('toeboard-layout').describe('What kind of document this is.'),
  version: z.literal(LAYOUT_VERSION).describe('The version of the form.'),
  name: z
    .string()
    .trim()
    .min(1)
    .max(200)
    .meta({ ...notBlank, description: 'The name of the variant.' }),
  notes: z.string().max(20_000).default('').describe('Anything that has to be said of it.'),
  car: car.describe('The whole car.'),
  axle: axle.describe('The front axle, wheels straight ahead at ride height.'),
  location: location.describe('What holds the axle lengthwise and against turning.'),
  lateral: lateral.describe('What holds the axle sideways.'),
  steering: steering.describe('From the steering box to the spindle.'),
  travel: travel.describe('How far the axle moves from ride height.'),
  origins: origins
    .describe(
      'Where points come from, by hardpoint: guessed, planned, taped on the car, or from a photo. A point that is not named is a guess; a mirrored pair is named once.',
    )
    .optional(),
  studs: studs
    .describe(
      'Directions of ball studs, by the hardpoint that they belong to, where they are not the usual ones.',
    )
    .optional(),
  diameters: diameters.describe('Outside diameters of tubes, where they are not the usual ones.').optional(),
  links: linksSchema
    .describe('What links and arms are made of and how their ends are made. What is absent is not known.')
    .optional(),
  rails: z.array(rail).max(20).default([]).describe('The frame rails.'),
  obstacles: z.array(obstacle).max(40).default([]).describe('What else is in the way, fixed to the frame.'),
  photos: z
    .array(photoSchema)
    .max(12)
    .default([])
    .describe('Photos that lie under the drawing. Their files are kept in the shop, by hash.'),
  underlays: z
    .array(underlaySchema)
    .max(UNDERLAYS_MAX)
    .describe('Drawings that lie under the views. Their files are kept in the shop, by hash. Absent, none.')
    .optional(),
  shaft: shaftSchema
    .nullable()
    .default(null)
    .describe('The steering shaft from the column to the box; null, none is drawn.'),
  ride: rideSchema
    .nullable()
    .default(null)
    .describe('Springs, dampers, tyres and masses; null, nothing was said of them.'),
  sits: sits
    .describe('How the car sits against how it was first drawn or measured. Absent, as it was.')
    .optional(),
  braking: brakingSchema
    .describe('What braking asks of the front axle. Absent, nothing was said of it.')
    .optional(),
});

/** The layout document as it is written in files and in the store: mm and degrees, mirrored sides unexpanded. */
export type LayoutDocument = z.infer<typeof layoutSchema>;
export type AxleSide = z.infer<typeof axleSide>;
export type Location = z.infer<typeof location>;
export type LocationKind = Location['kind'];
export type Lateral = z.infer<typeof lateral>;
export type LateralKind = Lateral['kind'];
export type Origin = z.infer<typeof origins>[string];
export type Rail = z.infer<typeof rail>;
export type Obstacle = z.infer<typeof obstacle>;

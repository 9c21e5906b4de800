import { z } from 'zod';
import type { AxlePoint, FramePoint, PitmanPoint, SpindlePoint } from '../geometry/points.ts';
import { linksSchema } from './links-schema.ts';
import { coordinate, length, point, pointOf } from './measures.ts';
import { photoSchema } from './photo-schema.ts';
import { rideSchema } from './ride-schema.ts';
import { shaftSchema } from './shaft-schema.ts';
import { LAYOUT_VERSION } from './version.ts';

const onFrame = pointOf<FramePoint>();
const onAxle = pointOf<AxlePoint>();
const onSpindle = pointOf<SpindlePoint>();

const angle = z.number().min(-45).max(45);

/** A right side is spelled out, or is the left side with y negated. */
const right = <Shape extends z.ZodType>(side: Shape) => z.union([z.literal('mirror'), side]);

const car = z.strictObject({
  wheelbase: length,
  frontAxleLoad: z.number().positive().max(200_000),
  tyreRadius: length,
  tyreWidth: length,
  handwheelRadius: length,
  /** How far the car's nose stands ahead of the front axle, and how wide it is there; absent, the tyres are foremost. */
  noseAhead: length.optional(),
  noseWidth: length.optional(),
  /** Absent, nobody said; the driver is taken to sit where the steering is drawn then. */
  driverSide: z.enum(['left', 'right']).optional(),
});

const axleSide = z.strictObject({
  kingpinTop: onAxle,
  kingpinBottom: onAxle,
  wheelCentre: onSpindle,
  camber: angle,
  toeIn: angle,
  tieRodBall: onSpindle,
});

const axle = z.strictObject({
  beam: z.enum(['i-beam', 'tube']),
  left: axleSide,
  right: right(axleSide),
});

const rod = z.strictObject({ framePivot: onFrame });
const bar = z.strictObject({ axle: onAxle, frame: onFrame });
const barPair = z.strictObject({ upper: bar, lower: bar });
const leaf = z.strictObject({ fixedEye: onFrame, seat: onAxle, shackleEye: onFrame });

const location = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('hairpins'), left: rod, right: right(rod) }),
  z.strictObject({ kind: z.literal('wishbone'), framePivot: onFrame }),
  z.strictObject({ kind: z.literal('four-bar'), left: barPair, right: right(barPair) }),
  z.strictObject({ kind: z.literal('parallel-leaf'), left: leaf, right: right(leaf) }),
]);

const lateral = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('bar'), axle: onAxle, frame: onFrame }),
  z.strictObject({ kind: z.literal('spring'), height: coordinate.optional() }),
]);

const box = z.strictObject({
  sectorCentre: onFrame,
  sectorAxis: point,
  pitmanBall: pointOf<PitmanPoint>(),
  ratio: z.number().positive().max(100),
  sectorTravel: z.number().positive().max(180),
  /** Degrees between the lines of the input and of the sector shaft; absent, a worm's input is square to it. */
  inputAngle: z.number().min(30).max(90).optional(),
  /** N·m at the sector shaft: the most that the box gives with assistance that works, by its maker; absent, not known. */
  greatestOutput: z.number().positive().max(20_000).optional(),
  assist: z.enum(['manual', 'power']),
});

const steering = z.strictObject({
  dragLinkTo: z.enum(['left', 'right']),
  dragLinkBall: onSpindle,
  box,
  /** Degrees of either wheel from straight ahead at which the axle's stops end the turn; absent, there are none. */
  stopAngle: z.number().positive().max(80).optional(),
});

const travel = z.strictObject({
  bump: z.number().min(0).max(1000),
  /** The wheel's travel in droop, as the document has called it since its first version; a damper's rebound is its own. */
  rebound: z.number().min(0).max(1000),
  roll: z.number().min(0).max(30),
});

/** A frame rail: the middle line of its section from front to back, and the section's size. */
const rail = z.strictObject({
  name: z.string().max(120),
  path: z.array(point).min(2).max(50),
  height: length,
  width: length,
  mirrored: z.boolean(),
});

const obstacleFacts = {
  name: z.string().trim().min(1).max(120),
  /** What it is to a builder. A link whose frame end stands on a crossmember is bolted to it. */
  role: z.enum(['engine', 'sump', 'header', 'crossmember', 'radiator', 'other']),
  /** True where a second one stands on the other side of the car's centre plane. */
  mirrored: z.boolean(),
};

/** An obstacle: fixed to the frame. `turn` is about z, degrees, right-hand; a tube's ends are its middle line's. */
const obstacle = z.discriminatedUnion('kind', [
  z.strictObject({
    ...obstacleFacts,
    kind: z.literal('box'),
    centre: point,
    size: z.tuple([length, length, length]).readonly(),
    turn: z.number().min(-180).max(180).optional(),
  }),
  z.strictObject({ ...obstacleFacts, kind: z.literal('cylinder'), from: point, to: point, radius: length }),
  z.strictObject({ ...obstacleFacts, kind: z.literal('capsule'), from: point, to: point, radius: length }),
]);

const diameter = z.number().positive().max(200);

/** Outside diameters of the tubes, where they are not the usual 22 mm (hairpins 19 mm). */
const diameters = z.strictObject({
  dragLink: diameter.optional(),
  tieRod: diameter.optional(),
  lateralBar: diameter.optional(),
  /** Of hairpins, wishbone rods or the four bars. */
  rods: diameter.optional(),
});

/** Directions of ball studs, by the hardpoint that they belong to, where they are not the usual ones. */
const studs = z.record(z.string().max(80), point);

/** Where points' places come from, by hardpoint; absent, a guess. A mirrored pair has one, under either id. */
const origins = z.record(z.string().max(80), z.enum(['guess', 'plan', 'tape', 'photo']));

export const layoutSchema = z.strictObject({
  format: z.literal('toeboard-layout'),
  version: z.literal(LAYOUT_VERSION),
  name: z.string().trim().min(1).max(200),
  notes: z.string().max(20_000).default(''),
  car,
  axle,
  location,
  lateral,
  steering,
  travel,
  origins: origins.optional(),
  studs: studs.optional(),
  diameters: diameters.optional(),
  links: linksSchema.optional(),
  rails: z.array(rail).max(20).default([]),
  obstacles: z.array(obstacle).max(40).default([]),
  photos: z.array(photoSchema).max(12).default([]),
  shaft: shaftSchema.nullable().default(null),
  ride: rideSchema.nullable().default(null),
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

import type { Point } from '../../shared-math/geometry/points.ts';
import {
  type Lateral,
  type LayoutDocument,
  type LocationKind,
  type Obstacle,
  PLAIN_LAYOUT,
  type Rail,
  readLayout,
} from '../../shared-math/layout/index.ts';
import { withLateralKind, withLocationKind } from '../../src-renderer/document/conversions.ts';
import { DEMONSTRATIONS } from './demonstration-files.ts';

// Cars that have everything but their steering: the demonstrations with theirs taken out, and ten more, all invented. What
// stands in the document as steering is a stand-in that no car would have, so that nothing can be proposed from it.

/** A car to be steered, and what a builder would say of it in a few words. */
export interface CarToSteer {
  readonly name: string;
  readonly document: LayoutDocument;
  /** Whether nothing can steer it, by how it was drawn. */
  readonly impossible?: boolean;
}

const STEERED_BY = /^(steering|lateral\.frame|shaft)\b/;

/** The column's end as given, and a joint on it: what has to be in a document that has a column at all. */
function columnAlone(end: Point, axis: Point): NonNullable<LayoutDocument['shaft']> {
  const length = Math.hypot(...axis);
  const on = (mm: number): Point =>
    end.map((value, i) => value + (mm * (axis[i] as number)) / length) as unknown as Point;
  return {
    column: {
      end,
      axis,
      fit: { kind: 'spline', form: 'involute-45', teeth: 36, pitch: 48, diameter: 19.58, length: 32 },
    },
    box: { end: on(60), axis },
    joints: [{ kind: 'single', centre: on(30) }],
    shafts: [],
    supports: [],
  };
}

/** The document with its steering taken out: car, axle, its location, stops and column stay, and nothing else of it. */
export function withoutSteering(document: LayoutDocument): LayoutDocument {
  const { shaft, steering, studs: _studs, links: _links, origins = {}, ...car } = document;
  const way = shaft && shaft.column.end[1] < 0 ? -1 : 1;
  const stop = steering.stopAngle === undefined ? {} : { stopAngle: steering.stopAngle };
  return {
    ...car,
    notes: '',
    photos: [],
    steering: {
      dragLinkTo: way > 0 ? 'left' : 'right',
      dragLinkBall: [-10, way * 540, 345],
      box: {
        sectorCentre: [-810, way * 430, 900],
        sectorAxis: [0, -1, 0],
        pitmanBall: [-810, way * 480, 742],
        ratio: 16,
        sectorTravel: 35,
        assist: 'manual',
      },
      ...stop,
    },
    origins: Object.fromEntries(Object.entries(origins).filter(([id]) => !STEERED_BY.test(id))),
    shaft: shaft && columnAlone(shaft.column.end, shaft.column.axis),
  };
}

/** mm of the outside of a rail's section across and up. */
const RAIL = { width: 50, height: 90 };

/** A pair of rails from front to back: mm ahead of the axle, out from the middle, above the ground. */
function rails(...path: Point[]): Rail[] {
  return [{ name: 'Frame rail', path, ...RAIL, mirrored: true }];
}

function block(
  name: string,
  role: Obstacle['role'],
  centre: Point,
  size: readonly [along: number, across: number, up: number],
  mirrored = false,
): Obstacle {
  return { kind: 'box', name, role, centre, size, mirrored };
}

function pipe(name: string, from: Point, to: Point, radius: number, mirrored = true): Obstacle {
  return { kind: 'capsule', name, role: 'header', from, to, radius, mirrored };
}

interface Parts {
  readonly name: string;
  readonly location: LocationKind;
  readonly lateral: Lateral['kind'];
  readonly beam?: 'i-beam' | 'tube';
  readonly car?: Partial<LayoutDocument['car']>;
  /** mm: radius and width of the tyres, and how far out their middles stand. */
  readonly wheel?: readonly [radius: number, width: number, out: number];
  readonly travel?: number;
  readonly stopAngle?: number;
  readonly rails: readonly Rail[];
  readonly obstacles: readonly Obstacle[];
  readonly column: readonly [end: Point, axis: Point];
  /** What of the location or the lateral bar is not where a plain car of this kind has it. */
  readonly changed?: Partial<Pick<LayoutDocument, 'location' | 'lateral'>>;
}

/** A car of these parts: the plain one with its axle at the wheels' height, and its kinds changed as the board does it. */
function carOf(parts: Parts): LayoutDocument {
  const [radius, width, out] = parts.wheel ?? [330, 130, 710];
  const plain = PLAIN_LAYOUT.axle.left;
  const inset = plain.wheelCentre[1] - out;
  const rise = radius - PLAIN_LAYOUT.car.tyreRadius;
  const on = <At extends Point>([x, y, z]: At) => [x, y - inset, z + rise] as unknown as At;
  const lifted: LayoutDocument = {
    ...PLAIN_LAYOUT,
    name: parts.name,
    car: { ...PLAIN_LAYOUT.car, ...parts.car, tyreRadius: radius, tyreWidth: width },
    axle: {
      beam: parts.beam ?? 'i-beam',
      left: {
        ...plain,
        kingpinTop: on(plain.kingpinTop),
        kingpinBottom: on(plain.kingpinBottom),
        wheelCentre: on(plain.wheelCentre),
        // Behind the axle, low enough to pass below a sump, pointing nearly at the middle of the rear axle.
        tieRodBall: on([-150, 612, 204]),
      },
      right: 'mirror',
    },
    location: { kind: 'hairpins', left: { framePivot: [-860, 360, 335 + rise] }, right: 'mirror' },
    lateral: { kind: 'bar', axle: [72, -480, 345 + rise], frame: [72, 330, 355 + rise] },
    travel: { bump: parts.travel ?? 76.2, rebound: parts.travel ?? 76.2, roll: 3 },
    rails: [...parts.rails],
    obstacles: [...parts.obstacles],
    shaft: columnAlone(...parts.column),
    steering: { ...PLAIN_LAYOUT.steering, stopAngle: parts.stopAngle ?? 29 },
  };
  const located = withLocationKind(lifted, parts.location);
  const kept = located.lateral.kind === parts.lateral ? located : withLateralKind(located, parts.lateral);
  const changed = { ...kept, ...parts.changed };
  const taped = Object.fromEntries(
    ['kingpinTop', 'kingpinBottom', 'wheelCentre', 'tieRodBall'].map((id) => [
      `axle.left.${id}`,
      'tape' as const,
    ]),
  );
  const read = readLayout({ ...withoutSteering({ ...changed, origins: taped }) });
  if (!read.ok) throw new Error(`${parts.name}: ${read.failure.path} ${read.failure.reason}`);
  return read.value;
}

const RADIATOR = block('Radiator', 'radiator', [265, 0, 690], [60, 500, 420]);
const HEADER = pipe('Header tube', [-480, 245, 640], [-1060, 285, 400], 22);
const COLUMN: Parts['column'] = [
  [-1200, 335, 760],
  [2, 0, -1],
];
const STRAIGHT = rails([430, 315, 510], [-320, 325, 510], [-660, 345, 440], [-2300, 435, 440]);

/** Engine, sump and a cooler ahead from rail to rail: all steering has to lie outside. */
const FULL_INSIDE = [
  block('Engine', 'engine', [-620, 0, 650], [760, 560, 420]),
  block('Sump', 'sump', [-620, 0, 425], [700, 520, 60]),
  block('Oil cooler', 'other', [180, 0, 560], [200, 560, 240]),
  RADIATOR,
];

const TEN: readonly (Parts & { readonly impossible?: boolean })[] = [
  {
    // Close behind the axle and down between the rails, its sump in front: nothing passes below or beside it.
    name: 'Tight engine',
    location: 'hairpins',
    lateral: 'spring',
    rails: STRAIGHT,
    obstacles: [
      block('Engine', 'engine', [-480, 0, 640], [660, 520, 430]),
      block('Sump', 'sump', [-300, 0, 405], [240, 210, 100]),
      pipe('Header tube', [-400, 285, 620], [-1040, 290, 400], 25),
      RADIATOR,
    ],
    column: COLUMN,
  },
  {
    // Heads wider than the frame: they stand over the rails, and what comes down from the column passes behind or below them.
    name: 'Wide engine',
    location: 'split-rods',
    lateral: 'bar',
    rails: STRAIGHT,
    obstacles: [
      block('Engine', 'engine', [-560, 0, 800], [620, 760, 300]),
      block('Crankcase', 'engine', [-560, 0, 560], [600, 320, 180]),
      block('Sump', 'sump', [-680, 0, 425], [260, 210, 90]),
      pipe('Header tube', [-500, 300, 640], [-1080, 290, 410], 24),
      RADIATOR,
    ],
    column: [
      [-1250, 345, 740],
      [3, 0, -1],
    ],
  },
  {
    // A light truck: heavier in front, leaves under the rails, a bar across ahead of the axle.
    name: 'Leaf springs',
    location: 'parallel-leaf',
    lateral: 'bar',
    wheel: [355, 165, 765],
    car: { wheelbase: 2900, frontAxleLoad: 7200, handwheelRadius: 205 },
    stopAngle: 30,
    rails: rails([560, 385, 578], [-420, 385, 578], [-840, 400, 492], [-2500, 455, 492]),
    obstacles: [
      block('Engine', 'engine', [-720, 0, 760], [680, 480, 460]),
      block('Sump', 'sump', [-840, 0, 485], [300, 230, 100]),
      pipe('Header tube', [-560, 270, 730], [-1180, 320, 460], 25),
      block('Radiator', 'radiator', [330, 0, 790], [75, 560, 480]),
    ],
    column: [
      [-820, 405, 880],
      [4, 0, -3],
    ],
    changed: {
      location: {
        kind: 'parallel-leaf',
        left: { fixedEye: [-560, 385, 368], seat: [0, 385, 330], shackleEye: [520, 385, 372] },
        right: 'mirror',
      },
      lateral: { kind: 'bar', axle: [78, -600, 400], frame: [78, 290, 410] },
    },
  },
  {
    name: 'Four bars',
    location: 'four-bar',
    lateral: 'bar',
    beam: 'tube',
    rails: rails([430, 345, 530], [-330, 350, 530], [-700, 380, 440], [-2300, 450, 440]),
    obstacles: [
      block('Engine', 'engine', [-660, 0, 690], [580, 440, 420]),
      block('Sump', 'sump', [-760, 0, 432], [240, 200, 96]),
      pipe('Header tube', [-540, 250, 650], [-1080, 300, 410], 22),
      RADIATOR,
    ],
    column: [
      [-1160, 335, 765],
      [2, 0, -1],
    ],
    changed: {
      location: {
        kind: 'four-bar',
        left: {
          upper: { axle: [-45, 425, 408], frame: [-645, 420, 414] },
          lower: { axle: [-45, 425, 268], frame: [-645, 420, 268] },
        },
        right: 'mirror',
      },
      lateral: { kind: 'bar', axle: [75, -540, 342], frame: [75, 310, 350] },
    },
  },
  {
    name: 'Wishbone',
    location: 'wishbone',
    lateral: 'bar',
    wheel: [345, 115, 720],
    rails: rails([450, 315, 530], [-320, 325, 530], [-660, 345, 445], [-2450, 440, 445]),
    obstacles: [
      block('Engine', 'engine', [-580, 0, 670], [600, 430, 400]),
      block('Sump', 'sump', [-640, 0, 430], [250, 170, 70]),
      pipe('Header tube', [-500, 245, 620], [-1080, 290, 420], 22),
      block('Gearbox crossmember', 'crossmember', [-980, 0, 390], [60, 670, 50]),
      block('Radiator', 'radiator', [265, 0, 700], [60, 500, 420]),
    ],
    column: [
      [-1240, 330, 770],
      [2, 0, -1],
    ],
    changed: {
      location: { kind: 'wishbone', framePivot: [-980, 0, 345] },
      lateral: { kind: 'bar', axle: [62, -430, 362], frame: [62, 330, 374] },
    },
  },
  {
    name: 'Right-hand drive',
    location: 'hairpins',
    lateral: 'spring',
    car: { driverSide: 'right' },
    rails: STRAIGHT,
    obstacles: [
      block('Engine', 'engine', [-520, 0, 645], [580, 440, 420]),
      block('Sump', 'sump', [-660, 0, 392], [260, 210, 86]),
      HEADER,
      // On the side away from the driver alone.
      block('Starter', 'other', [-700, 185, 470], [220, 110, 110]),
      RADIATOR,
    ],
    column: [
      [-1200, -335, 760],
      [2, 0, -1],
    ],
  },
  {
    // Rails hardly above the axle, little travel, the sump close to the road.
    name: 'Low car',
    location: 'hairpins',
    lateral: 'bar',
    wheel: [305, 125, 700],
    travel: 50,
    car: { frontAxleLoad: 4300, handwheelRadius: 175 },
    rails: rails([420, 300, 455], [-300, 310, 455], [-620, 335, 355], [-2300, 420, 355]),
    obstacles: [
      block('Engine', 'engine', [-560, 0, 555], [580, 430, 400]),
      block('Sump', 'sump', [-660, 0, 315], [260, 210, 90]),
      pipe('Header tube', [-480, 240, 540], [-1040, 275, 320], 22),
      block('Radiator', 'radiator', [255, 0, 600], [60, 480, 400]),
    ],
    column: [
      [-1180, 325, 650],
      [3, 0, -1],
    ],
    changed: {
      location: { kind: 'hairpins', left: { framePivot: [-860, 360, 300] }, right: 'mirror' },
      lateral: { kind: 'bar', axle: [72, -440, 306], frame: [72, 300, 314] },
    },
  },
  {
    name: 'Tall tyre',
    location: 'split-rods',
    lateral: 'spring',
    wheel: [405, 185, 760],
    car: { wheelbase: 2850, frontAxleLoad: 5600, handwheelRadius: 205 },
    stopAngle: 27,
    rails: rails([430, 325, 600], [-320, 335, 600], [-680, 355, 530], [-2400, 440, 530]),
    obstacles: [
      block('Engine', 'engine', [-580, 0, 745], [600, 440, 420]),
      block('Sump', 'sump', [-680, 0, 485], [260, 210, 100]),
      pipe('Header tube', [-500, 245, 730], [-1080, 290, 500], 22),
      block('Radiator', 'radiator', [265, 0, 780], [60, 500, 420]),
    ],
    column: [
      [-1240, 340, 850],
      [2, 0, -1],
    ],
  },
  {
    name: 'No room inside the rails',
    location: 'hairpins',
    lateral: 'spring',
    rails: STRAIGHT,
    obstacles: FULL_INSIDE,
    column: COLUMN,
  },
  {
    // The same on leaves, with tanks and ducts outside both rails and a nose that fills the front: no box has a place.
    name: 'No room anywhere',
    impossible: true,
    stopAngle: 27,
    location: 'parallel-leaf',
    lateral: 'spring',
    rails: STRAIGHT,
    obstacles: [
      block('Engine', 'engine', [-640, 0, 650], [840, 600, 420]),
      block('Sump', 'sump', [-650, 0, 345], [780, 540, 190]),
      block('Blower', 'engine', [-60, 0, 710], [340, 640, 360]),
      block('Nose tank', 'other', [510, 0, 575], [780, 570, 650]),
      block('Nose duct', 'other', [510, 391, 575], [780, 38, 650], true),
      block('Side tank', 'other', [-900, 506, 575], [1000, 268, 650], true),
      block('Wing duct', 'other', [-140, 391, 710], [520, 38, 380], true),
      block('Duct', 'other', [-360, 391, 385], [80, 38, 270], true),
    ],
    column: COLUMN,
    changed: {
      location: {
        kind: 'parallel-leaf',
        left: { fixedEye: [500, 332, 365], seat: [0, 332, 320], shackleEye: [-560, 332, 372] },
        right: 'mirror',
      },
    },
  },
];

/** Between the rails ahead of the axle, down to where a drag link would run. */
const NOSE_TANK = block('Nose tank', 'other', [290, 0, 420], [320, 560, 240]);

/** Cars that only one arrangement of the box fits, each for what a usual one runs into. */
const TWO_MORE: readonly Parts[] = [
  {
    // Nothing between the rails, and tanks close beside them, so that neither box nor arm has room there: but over the rails it is free.
    name: 'Room on top of the rail alone',
    location: 'hairpins',
    lateral: 'spring',
    rails: STRAIGHT,
    obstacles: [
      ...FULL_INSIDE,
      NOSE_TANK,
      block('Side tank', 'other', [-900, 565, 430], [700, 200, 420], true),
      block('Wing duct', 'other', [-330, 400, 520], [420, 40, 160], true),
    ],
    column: COLUMN,
  },
  {
    // The rails drop behind the axle and the body is channelled down over them: a box has room low beside them alone.
    name: 'Low rails under a channelled body',
    location: 'hairpins',
    lateral: 'spring',
    rails: rails([430, 315, 510], [-320, 325, 510], [-450, 345, 250], [-2300, 435, 250]),
    obstacles: [...FULL_INSIDE, NOSE_TANK, block('Body', 'other', [-700, 0, 540], [560, 860, 400])],
    column: [
      [-1200, 440, 480],
      [2, 0, -1],
    ],
  },
];

/** The five demonstrations with their steering taken out. */
export const DEMONSTRATIONS_TO_STEER: readonly CarToSteer[] = DEMONSTRATIONS.map(([file, document]) => ({
  name: file.replace('.json', ''),
  document: withoutSteering(document),
}));

/** Ten more, each awkward in its own way; the last cannot be steered. */
export const CARS_TO_STEER: readonly CarToSteer[] = TEN.map((parts) => ({
  name: parts.name,
  document: carOf(parts),
  ...(parts.impossible ? { impossible: true } : {}),
}));

export const ALL_TO_STEER: readonly CarToSteer[] = [...DEMONSTRATIONS_TO_STEER, ...CARS_TO_STEER];

/** Two more, of which each leaves the box one place. */
export const CARS_FOR_ONE_WAY: readonly CarToSteer[] = TWO_MORE.map((parts) => ({
  name: parts.name,
  document: carOf(parts),
}));

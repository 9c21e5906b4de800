import type { ShopLimits } from '../findings/index.ts';
import { hardpoints, type LayoutDocument, originOf } from '../layout/index.ts';
import type { Shelved } from '../shelf/index.ts';
import type { LengthStyle } from '../units/index.ts';
import type { Rooms } from './rooms.ts';

/** What a proposal may choose, or what the user holds. */
export const HOLDS = [
  'way',
  'box',
  'mount',
  'axle-side',
  'arm-way',
  'box-turn',
  'box-kind',
  'pitman-arm',
  'steering-arm',
  'tie-rod',
  'lateral',
  'shaft',
  'stops',
] as const;

export type HoldName = (typeof HOLDS)[number];

/** What is asked: proposals of a whole steering for this car. */
export interface ProposeQuestion {
  /** The car. Of its steering only what is held counts; rails, obstacles, axle and column stand as they are. */
  readonly document: LayoutDocument;
  /** What stands as drawn. Absent, what is measured or planned: `heldAsMeasured`. */
  readonly held?: readonly HoldName[];
  /** How far what is not held may go, where a person says so; as far as is usual else. */
  readonly rooms?: Rooms;
  readonly shelf?: readonly Shelved[];
  readonly limits?: ShopLimits;
  /** The reader's unit, for the sentences. */
  readonly style: LengthStyle;
  /** The same seed gives the same answer. 1 if absent. */
  readonly seed?: number;
}

/** The hardpoints by whose origin it is known that something is held. */
const POINTS: Readonly<Partial<Record<HoldName, (id: string) => boolean>>> = {
  box: (id) => id === 'steering.box.sectorCentre',
  // One that stands on the car is the one that it has.
  'box-kind': (id) => id === 'steering.box.sectorCentre',
  'pitman-arm': (id) => id === 'steering.box.pitmanBall',
  'steering-arm': (id) => id === 'steering.dragLinkBall',
  'tie-rod': (id) => /^axle\.(left|right)\.tieRodBall$/.test(id),
  lateral: (id) => id.startsWith('lateral.'),
  shaft: (id) => id.startsWith('shaft.joints.'),
};

/** What stands still unless the user lets it go: whatever of the steering was measured on the car or is planned. */
export function heldAsMeasured(document: LayoutDocument): HoldName[] {
  const points = hardpoints(document);
  return HOLDS.filter((name) => {
    const isPart = POINTS[name];
    return isPart && points.some((point) => isPart(point.id) && originOf(document, point) !== 'guess');
  });
}

/** What is as drawn where something else is: a box that stands is where it is, and an arm that stands is made for one way of steering. */
const STAND_WITH: Readonly<Partial<Record<HoldName, readonly HoldName[]>>> = {
  way: ['steering-arm', 'box', 'shaft'],
  mount: ['box', 'shaft'],
  'axle-side': ['box', 'shaft'],
  'arm-way': ['box', 'shaft'],
  'box-turn': ['box', 'shaft'],
};

/** What is held by which this stands as drawn too; undefined where it may be otherwise. Held itself, it is itself. */
export function standsBy(held: readonly HoldName[], name: HoldName): HoldName | undefined {
  return [name, ...(STAND_WITH[name] ?? [])].find((each) => held.includes(each));
}

/** The rooms of what may be otherwise: what stands as drawn has none. */
export function openRooms(rooms: Rooms, held: readonly HoldName[]): Rooms {
  return Object.fromEntries(
    HOLDS.flatMap((name) => (rooms[name] && !standsBy(held, name) ? [[name, rooms[name]]] : [])),
  );
}

const STEERING = /^(steering|shaft)\./;

/** The document with what is known of its steering forgotten: its points count as guessed, those of the axle do not. */
export function withSteeringForgotten(document: LayoutDocument): LayoutDocument {
  const { origins = {} } = document;
  return {
    ...document,
    origins: Object.fromEntries(Object.entries(origins).filter(([id]) => !STEERING.test(id))),
  };
}

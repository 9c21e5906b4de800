import type { Point } from '../geometry/points.ts';
import { add, dot, scaled, subtract, unit } from '../geometry/vectors.ts';
import { type LateralKind, type LayoutDocument, moveHardpoint } from '../layout/index.ts';

const AXES = ['along', 'across', 'up'] as const;
type Axis = (typeof AXES)[number];

export type FreedomName =
  | `box-${Axis}`
  | 'pitman-length'
  | `link-end-${Axis}`
  | `arm-ball-${Axis}`
  | `bar-axle-${Axis}`
  | `bar-frame-${Axis}`;

/** One thing that a tune may move, in one direction. */
export interface Freedom {
  readonly name: FreedomName;
  /** "the box fore and aft". */
  readonly words: string;
  /** Whether the axle's own path changes with it; else only the steering's. */
  readonly movesAxle: boolean;
  /** Why a layout has no such thing, or undefined if it has. */
  absent(document: LayoutDocument): string | undefined;
  /** The document with it moved by so many mm: forward, to the car's left, up, longer. Not validated. */
  move(document: LayoutDocument, by: number): LayoutDocument;
}

/** mm each way: what a tune tries where nobody says how far. */
export const USUAL_WITHIN = 75;

const WAYS: Record<Axis, string> = { along: 'fore and aft', across: 'sideways', up: 'up and down' };
const DIRECTION: Record<Axis, Point> = { along: [1, 0, 0], across: [0, 1, 0], up: [0, 0, 1] };

function shifted(document: LayoutDocument, id: string, from: Point, by: Point): LayoutDocument {
  return moveHardpoint(document, id, add(from, by));
}

/** Moves one hardpoint along one axis. `at` finds it; a layout without it has none. */
function alongAxis(
  name: (axis: Axis) => FreedomName,
  what: string,
  id: string,
  at: (document: LayoutDocument) => Point | undefined,
  absence: (document: LayoutDocument) => string,
  movesAxle: boolean,
): Freedom[] {
  return AXES.map((axis) => ({
    name: name(axis),
    words: `${what} ${WAYS[axis]}`,
    movesAxle,
    absent: (document) => (at(document) ? undefined : absence(document)),
    move: (document, by) => {
      const from = at(document);
      return from ? shifted(document, id, from, scaled(DIRECTION[axis], by)) : document;
    },
  }));
}

/** The pitman ball further out along its arm, square to the sector's axis. */
function lengthened(document: LayoutDocument, by: number): LayoutDocument {
  const { sectorCentre, sectorAxis, pitmanBall } = document.steering.box;
  const axis = unit(sectorAxis);
  const arm = subtract(pitmanBall, sectorCentre);
  const out = unit(subtract(arm, scaled(axis, dot(arm, axis))));
  return shifted(document, 'steering.box.pitmanBall', pitmanBall, scaled(out, by));
}

const NO_BAR: Readonly<Record<Exclude<LateralKind, 'bar'>, string>> = {
  spring: 'the spring keeps the axle centred: there is no lateral bar to move',
  watt: 'a Watt’s linkage holds the axle sideways: there is no lateral bar to move',
  'fixed-spring': 'the fixed eye of the spring holds the axle sideways: there is no lateral bar to move',
};
const noBar = ({ lateral }: LayoutDocument) => (lateral.kind === 'bar' ? '' : NO_BAR[lateral.kind]);

const barEnd = (end: 'axle' | 'frame') => (document: LayoutDocument) =>
  document.lateral.kind === 'bar' ? document.lateral[end] : undefined;

/** What a tune may move. A new one is one more entry. */
export const FREEDOMS: readonly Freedom[] = [
  ...alongAxis(
    (axis) => `box-${axis}`,
    'the box',
    'steering.box.sectorCentre',
    (document) => document.steering.box.sectorCentre,
    () => '',
    false,
  ),
  {
    name: 'pitman-length',
    words: 'the pitman arm longer and shorter',
    movesAxle: false,
    absent: () => undefined,
    move: lengthened,
  },
  ...alongAxis(
    (axis) => `link-end-${axis}`,
    'the frame end of the drag link',
    'steering.box.pitmanBall',
    (document) => document.steering.box.pitmanBall,
    () => '',
    false,
  ),
  ...alongAxis(
    (axis) => `arm-ball-${axis}`,
    'the steering arm ball',
    'steering.dragLinkBall',
    (document) => document.steering.dragLinkBall,
    () => '',
    false,
  ),
  ...alongAxis(
    (axis) => `bar-axle-${axis}`,
    'the lateral bar’s axle end',
    'lateral.axle',
    barEnd('axle'),
    noBar,
    true,
  ),
  ...alongAxis(
    (axis) => `bar-frame-${axis}`,
    'the lateral bar’s frame end',
    'lateral.frame',
    barEnd('frame'),
    noBar,
    true,
  ),
];

/** A freedom by its name; nothing for a name that is none. */
export function freedomNamed(name: string): Freedom | undefined {
  return FREEDOMS.find((freedom) => freedom.name === name);
}

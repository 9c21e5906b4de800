import { mirrored, type Point } from '../geometry/points.ts';
import { broughtByWheel, withWheelCentreAt } from './axle-group.ts';
import { resolveLayout } from './resolve.ts';
import type { LayoutDocument } from './schema.ts';
import { shaftPoints, shaftPointsOnBox, withShaftAtBox, withShaftPoint } from './shaft-points.ts';
import type { Side } from './sides.ts';

/** What carries a point: the frame, a half of the axle beam, the spindle turned on its kingpin, the pitman arm. */
export type Carrier = 'frame' | 'axle-left' | 'axle-right' | 'spindle-left' | 'spindle-right' | 'pitman';

/** A named point of the layout, at ride height. */
export interface Hardpoint {
  /** Its place in the document with mirrored sides spelled out: `axle.right.kingpinTop`. */
  readonly id: string;
  /** What a builder calls it. */
  readonly name: string;
  readonly carrier: Carrier;
  readonly at: Point;
  /** The same point of the other side, where the layout mirrors it: moving one moves both. */
  readonly twin?: string;
  /** Points that are bolted to it and come along when it is moved. */
  readonly brings?: readonly string[];
  /** The part whose axis it slides on. */
  readonly slides?: 'column' | 'box';
}

interface Entry {
  readonly path: string;
  readonly name: string;
  readonly carrier: Carrier | 'axle' | 'spindle';
  /** One of a left and a right, and which part of the document says whether the right is the mirror image. */
  readonly sided?: 'axle' | 'location';
}

const AXLE: readonly Entry[] = [
  { path: 'kingpinTop', name: 'kingpin, top', carrier: 'axle', sided: 'axle' },
  { path: 'kingpinBottom', name: 'kingpin, bottom', carrier: 'axle', sided: 'axle' },
  { path: 'wheelCentre', name: 'wheel centre', carrier: 'spindle', sided: 'axle' },
  { path: 'tieRodBall', name: 'tie rod ball', carrier: 'spindle', sided: 'axle' },
];

/** Which points each kind of axle location has. A new kind is one new row. */
const LOCATION: Record<LayoutDocument['location']['kind'], readonly Entry[]> = {
  hairpins: [{ path: 'framePivot', name: 'hairpin pivot', carrier: 'frame', sided: 'location' }],
  wishbone: [{ path: 'framePivot', name: 'wishbone pivot', carrier: 'frame' }],
  'four-bar': [
    { path: 'upper.axle', name: 'upper bar, axle end', carrier: 'axle', sided: 'location' },
    { path: 'upper.frame', name: 'upper bar, frame end', carrier: 'frame', sided: 'location' },
    { path: 'lower.axle', name: 'lower bar, axle end', carrier: 'axle', sided: 'location' },
    { path: 'lower.frame', name: 'lower bar, frame end', carrier: 'frame', sided: 'location' },
  ],
  'parallel-leaf': [
    { path: 'fixedEye', name: 'spring, fixed eye', carrier: 'frame', sided: 'location' },
    { path: 'seat', name: 'spring seat', carrier: 'axle', sided: 'location' },
    { path: 'shackleEye', name: 'spring, shackle eye', carrier: 'frame', sided: 'location' },
  ],
};

const SIDE_NAME: Record<Side, string> = { left: 'Left', right: 'Right' };

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function valueAt(root: unknown, path: string): unknown {
  let value = root;
  for (const key of path.split('.')) value = (value as Record<string, unknown>)[key];
  return value;
}

/** A copy with the value at the path replaced; everything beside the path is shared. */
function withValueAt<Root>(root: Root, keys: readonly string[], value: unknown): Root {
  const [key, ...rest] = keys;
  if (key === undefined) return value as Root;
  if (Array.isArray(root)) return root.with(Number(key), withValueAt(root[Number(key)], rest, value)) as Root;
  const record = root as Record<string, unknown>;
  return { ...record, [key]: withValueAt(record[key], rest, value) } as Root;
}

/** The half of the axle that carries an unlabelled point: that of its y's sign; the left half at y = 0. */
export function halfOf(point: Point): Side {
  return point[1] < 0 ? 'right' : 'left';
}

/**
 * All hardpoints of a document, with mirrored sides spelled out, in the order of the car: axle, location,
 * lateral, steering, shaft. Positions are those of ride height, mm, vehicle axes.
 */
export function hardpoints(document: LayoutDocument): Hardpoint[] {
  const layout = resolveLayout(document);
  const points: Hardpoint[] = [];

  const addSided = (root: 'axle' | 'location', entries: readonly Entry[]) => {
    const mirroring = 'right' in document[root] && document[root].right === 'mirror';
    for (const entry of entries)
      for (const side of entry.sided ? (['left', 'right'] as const) : [undefined]) {
        const id = side ? `${root}.${side}.${entry.path}` : `${root}.${entry.path}`;
        const carrier =
          entry.carrier === 'axle' || entry.carrier === 'spindle'
            ? (`${entry.carrier}-${side ?? 'left'}` as Carrier)
            : entry.carrier;
        const other = side === 'left' ? 'right' : 'left';
        points.push({
          id,
          name: side ? `${SIDE_NAME[side]} ${entry.name}` : capitalised(entry.name),
          carrier,
          at: valueAt(layout, id) as Point,
          ...(side && mirroring ? { twin: `${root}.${other}.${entry.path}` } : {}),
          ...(side && entry.path === 'wheelCentre' ? { brings: broughtByWheel(document, side) } : {}),
        });
      }
  };

  addSided('axle', AXLE);
  addSided('location', LOCATION[document.location.kind]);

  if (layout.lateral.kind === 'bar') {
    points.push({
      id: 'lateral.axle',
      name: 'Lateral bar, axle end',
      carrier: `axle-${halfOf(layout.lateral.axle)}`,
      at: layout.lateral.axle,
    });
    points.push({
      id: 'lateral.frame',
      name: 'Lateral bar, frame end',
      carrier: 'frame',
      at: layout.lateral.frame,
    });
  }

  const { steering } = layout;
  points.push(
    {
      id: 'steering.dragLinkBall',
      name: 'Steering arm ball',
      carrier: `spindle-${steering.dragLinkTo}`,
      at: steering.dragLinkBall,
    },
    { id: 'steering.box.pitmanBall', name: 'Pitman ball', carrier: 'pitman', at: steering.box.pitmanBall },
    {
      id: 'steering.box.sectorCentre',
      name: 'Steering box',
      carrier: 'frame',
      at: steering.box.sectorCentre,
      brings: ['steering.box.pitmanBall', ...shaftPointsOnBox(layout.shaft)],
    },
  );
  if (layout.shaft) points.push(...shaftPoints(layout.shaft));
  return points;
}

/**
 * A copy of the document with one hardpoint moved. A mirrored right point moves its left twin; the steering box
 * takes its pitman ball along, as the arm is bolted to it, and the box end of the shaft; a wheel centre its half of the
 * axle as `withWheelCentreAt` has it; the shaft's own points as `withShaftPoint` has it. The result is not validated.
 */
export function moveHardpoint(document: LayoutDocument, id: string, to: Point): LayoutDocument {
  const wheel = WHEEL_CENTRE.exec(id);
  if (wheel) return withWheelCentreAt(document, wheel[1] as Side, to);
  return placeHardpoint(document, id, to);
}

const WHEEL_CENTRE = /^axle\.(left|right)\.wheelCentre$/;

/** As `moveHardpoint`, but a wheel centre leaves the axle where it is: for places that were each seen by themselves. */
export function placeHardpoint(document: LayoutDocument, id: string, to: Point): LayoutDocument {
  const keys = id.split('.');
  const root = keys[0] as 'axle' | 'location';
  if (keys[1] === 'right' && (document[root] as { right: unknown }).right === 'mirror')
    return withValueAt(document, [root, 'left', ...keys.slice(2)], mirrored(to));
  if (id === 'steering.box.sectorCentre') {
    const { sectorCentre: from, pitmanBall } = document.steering.box;
    const ball = pitmanBall.map((value, axis) => value + (to[axis] as number) - (from[axis] as number));
    const armed = withValueAt(document, ['steering', 'box', 'pitmanBall'], ball);
    return withShaftAtBox(withValueAt(armed, ['steering', 'box', 'sectorCentre'], to), from);
  }
  if (keys[0] === 'shaft' && document.shaft)
    return { ...document, shaft: withShaftPoint(document.shaft, id, to) };
  return withValueAt(document, keys, to);
}

/**
 * A copy of the document with the value at a path replaced, as `car.wheelbase` or `obstacles.0.centre`. The result is
 * not validated.
 */
export function withValue(document: LayoutDocument, path: string, value: unknown): LayoutDocument {
  return withValueAt(document, path.split('.'), value);
}

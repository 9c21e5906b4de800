import type { Point } from '../geometry/points.ts';
import { distance } from '../geometry/points.ts';
import { dot, subtract, unit } from '../geometry/vectors.ts';
import { hardpoints, type Layout, lateralBars } from '../layout/index.ts';
import type { FrontEnd } from '../linkage/index.ts';
import type { LinkKey } from '../links/index.ts';
import type { AxleRow } from '../pose/index.ts';
import type { RowForce, Statics } from './statics.ts';

/**
 * How a figure's sign reads: a link pulls (above 0) or pushes; a ball holds the axle along the car as its rod does, up or
 * down, to the left or right; a moment turns the wheel to the left or right.
 */
export type FigureKind = 'link' | 'along' | 'upright' | 'across' | 'moment';

/** A figure that every load case has: of a link, of a ball that holds the axle, or of a shaft. */
export interface ForceFigure {
  /** `dragLink`, `tieRod`, `sector`, `kingpin.left`, a hardpoint of what holds the axle with the figure's axis. */
  readonly id: string;
  readonly name: string;
  readonly kind: FigureKind;
  /** The part of the car that it belongs to, as the board knows it. */
  readonly part: string;
  /** What it is made of by the document, and how long from centre to centre (mm): of links alone. */
  readonly link?: { readonly key: LinkKey; readonly length: number };
}

/** A figure with how it is read off the forces of a pose: N, or N·mm of a moment. */
export interface ReadFigure extends ForceFigure {
  readonly of: (statics: Statics) => number;
}

const BARE = /, (frame|axle) end$/;

/** The point of the document that a row is about: that of its frame end, else of its axle end. */
function namedPoint(layout: Layout, row: AxleRow): { id: string; name: string } | undefined {
  const points = hardpoints(layout);
  const at = (point: Point) =>
    points.find((each) => /^(location|lateral)\./.test(each.id) && each.at === point);
  if (row.form === 'centred') return { id: 'lateral', name: 'Spring across the car' };
  if (row.form === 'rocker') return undefined;
  const found = row.form === 'leaf-pitch' ? at(row.seat) : (at(row.frame) ?? at(row.axle));
  return found && { id: found.id, name: found.name.replace(BARE, '') };
}

/** Of a rod's ball that is fast to the axle, the way from it toward the axle, level: pushed along it the rod pushes. */
function rodWay({ axleEnd }: RowForce, statics: Statics): Point {
  const middle = statics.centre;
  const way: Point = [middle[0] - axleEnd[0], 0, 0];
  return unit(way[0] === 0 ? [1, 0, 0] : way);
}

/** Both bars of a Watt's linkage. */
function rockerFigures(layout: Layout, index: number): ReadFigure[] {
  return lateralBars(layout.lateral).map(({ name, from, to }, bar) => ({
    id: to.id,
    name,
    kind: 'link',
    part: to.id,
    link: { key: 'lateralBar', length: distance(from.at, to.at) },
    of: (statics) => statics.rows[index]?.bars?.[bar] ?? 0,
  }));
}

function rowFigures(layout: Layout, row: AxleRow, index: number): ReadFigure[] {
  if (row.form === 'rocker') return rockerFigures(layout, index);
  const named = namedPoint(layout, row);
  if (!named) return [];
  const { id, name } = named;
  const force = (statics: Statics) => statics.rows[index] as RowForce;
  const locating = id.startsWith('location.');
  const part = row.form === 'centred' ? 'axle.left.wheelCentre' : id;
  if (row.form === 'centred')
    return [
      { id, name, kind: 'across', part: 'axle.left.wheelCentre', of: (statics) => force(statics).force[1] },
    ];
  if (row.form === 'leaf-pitch')
    return [
      {
        id: `${id}.wind-up`,
        name: `${name}, moment that winds it up`,
        kind: 'moment',
        part,
        of: (statics) => force(statics).couple,
      },
    ];
  if (row.form === 'distance') {
    // A link ends in points of the document; a leaf runs an arc about a point that is none.
    const leaf = !hardpoints(layout).some(({ at }) => at === row.frame);
    return [
      {
        id,
        name: leaf ? `${name.replace(/, (fixed )?eye$/, '')}, along the leaf` : name,
        kind: 'link',
        part,
        ...(leaf
          ? {}
          : {
              link: {
                key: locating ? ('rods' as const) : ('lateralBar' as const),
                length: distance(row.drawn ?? row.axle, row.frame),
              },
            }),
        of: (statics) => force(statics).along,
      },
    ];
  }
  const ball = { part };
  const axes: ReadFigure[] = [];
  if (row.weights[0] === 1)
    axes.push({
      ...ball,
      id: `${id}.along`,
      name: `${name}, along the car`,
      kind: 'along',
      // The frame pulls the axle toward the ball: the rod pulls.
      of: (statics) => -dot(force(statics).force, rodWay(force(statics), statics)),
    });
  if (row.weights[1] === 1)
    axes.push({
      ...ball,
      id: `${id}.across`,
      name: `${name}, across the car`,
      kind: 'across',
      of: (statics) => force(statics).force[1],
    });
  if (row.weights[2] === 1)
    axes.push({
      ...ball,
      id: `${id}.upright`,
      name: `${name}, up and down`,
      kind: 'upright',
      of: (statics) => force(statics).force[2],
    });
  return axes;
}

/** All figures of a front end, links that steer first, then what holds the axle, then moments; in the order shown. */
export function forceFigures(frontEnd: FrontEnd): ReadFigure[] {
  const { layout, axle, dragLinkLength, tieRodLength } = frontEnd;
  const rows = axle.rows.flatMap((row, index) => rowFigures(layout, row, index));
  return [
    {
      id: 'dragLink',
      name: 'Drag link',
      kind: 'link',
      part: 'steering.dragLinkBall',
      link: { key: 'dragLink', length: dragLinkLength },
      of: ({ dragLink }) => dragLink,
    },
    {
      id: 'tieRod',
      name: 'Tie rod',
      kind: 'link',
      part: 'axle.left.tieRodBall',
      link: { key: 'tieRod', length: tieRodLength },
      of: ({ tieRod }) => tieRod,
    },
    ...rows.filter(({ kind }) => kind !== 'moment'),
    {
      id: 'sector',
      name: 'Sector shaft',
      kind: 'moment',
      part: 'steering.box.sectorCentre',
      of: ({ sector }) => sector,
    },
    ...(['left', 'right'] as const).map(
      (side): ReadFigure => ({
        id: `kingpin.${side}`,
        name: `${side === 'left' ? 'Left' : 'Right'} kingpin`,
        kind: 'moment',
        part: `axle.${side}.kingpinTop`,
        of: ({ kingpin }) => kingpin[side],
      }),
    ),
    ...rows.filter(({ kind }) => kind === 'moment'),
  ];
}

/** The way that a link's end is pulled by it, N along the car's axes. */
export function pullOn(end: Point, other: Point, pull: number): Point {
  const way = unit(subtract(other, end));
  return [way[0] * pull, way[1] * pull, way[2] * pull];
}

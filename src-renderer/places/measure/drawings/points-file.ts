import type { Point } from '../../../../shared-math/geometry/points.ts';
import {
  type Hardpoint,
  type LayoutDocument,
  numberedPoints,
  type Origin,
  placeHardpoint,
  withOrigin,
} from '../../../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../../../shared-math/outcome.ts';
import { quoted } from '../../../../shared-math/outside/index.ts';
import { type LengthUnit, parseLength } from '../../../../shared-math/units/index.ts';
import type { Reply } from '../../../../src-main/api/contract.ts';

type Line = Reply<'points.readCsv'>['lines'][number];

/** A point that a table puts somewhere: from where to where, and how far that is; mm. */
export interface PointMove {
  readonly line: number;
  readonly point: Hardpoint;
  readonly to: Point;
  readonly far: number;
}

/** What a table of points would do. */
export interface PointsTaken {
  /** Those that stand elsewhere than they do now, in the table's order. */
  readonly moves: readonly PointMove[];
  /** Points of the table that stand where it puts them already. */
  readonly same: number;
  /** A sentence for each line that is not taken, without its full stop. */
  readonly refused: readonly string[];
  /** The document with all of it, the points planned where the table puts them. Not validated. */
  readonly document: LayoutDocument;
}

/** mm. Nearer than this a point stands where it stood. */
const SAME = 1e-4;

/** The point that a line names: by id, by name, or by the number that it has on board and paper. */
function pointOf(document: LayoutDocument, named: string): Outcome<Hardpoint, string> {
  const points = numberedPoints(document);
  const plain = named.toLowerCase();
  const found =
    points.find(({ id }) => id === named) ??
    points.find(({ name }) => name.toLowerCase() === plain) ??
    (/^\d+$/.test(named) ? points.find(({ number }) => number === Number(named)) : undefined);
  return found ? succeeded(found) : failed(`this layout has no point ${quoted(named)}`);
}

function placeOf({ at }: Line, point: Hardpoint, unit: LengthUnit): Outcome<Point, string> {
  const to: [number, number, number] = [point.at[0], point.at[1], point.at[2]];
  for (const [axis, typed] of at.entries()) {
    if (typed === '') continue;
    const value = parseLength(typed, unit);
    if (!value.ok) return failed(`${'xyz'[axis]}: ${value.failure}`);
    to[axis] = value.value;
  }
  return succeeded(to);
}

const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Works out what a table of points would do to a document, line by line; nothing is changed. */
export function pointsTaken(document: LayoutDocument, lines: readonly Line[], unit: LengthUnit): PointsTaken {
  const refused: string[] = [];
  const taken = new Map<string, { line: number; point: Hardpoint; to: Point }>();
  for (const line of lines) {
    const named = pointOf(document, line.point);
    const to = named.ok ? placeOf(line, named.value, unit) : named;
    if (!named.ok || !to.ok) {
      refused.push(`Line ${line.line}, ${quoted(line.point)}: ${to.ok ? '' : to.failure}`);
      continue;
    }
    const point = named.value;
    const before = taken.get(point.id);
    if (before) {
      refused.push(`Line ${line.line}, ${point.name}: line ${before.line} names the same point`);
      continue;
    }
    const twin = point.twin === undefined ? undefined : taken.get(point.twin);
    const [x, y, z] = to.value;
    if (twin && distance(twin.to, [x, -y, z]) > SAME) {
      refused.push(
        `Line ${line.line}, ${point.name}: is the mirror image of ${twin.point.name} on line ${twin.line}, and does not stand there`,
      );
      continue;
    }
    taken.set(point.id, { line: line.line, point, to: to.value });
  }
  const all = [...taken.values()];
  let result = document;
  let origins: Record<string, Origin> = { ...document.origins };
  // What brings others along first: they have places of their own in the table.
  for (const { point, to } of [...all].sort((a, b) => Number(!a.point.brings) - Number(!b.point.brings))) {
    result = placeHardpoint(result, point.id, to);
    origins = withOrigin(origins, point, 'plan');
  }
  const moves = all
    .map((each): PointMove => ({ ...each, far: distance(each.point.at, each.to) }))
    .filter(({ far }) => far > SAME);
  return { moves, same: all.length - moves.length, refused, document: { ...result, origins } };
}

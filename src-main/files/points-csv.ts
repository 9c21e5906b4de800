import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { quoted } from '../../shared-math/outside/index.ts';
import type { LengthUnit } from '../../shared-math/units/index.ts';
import { DEFUSED, delimiterOf, linesOf } from './csv-lines.ts';

// Points as a table file: which point, and where it stands in the car's frame. The head says what each column is and in
// which unit.

/** Characters. A car has some tens of points. */
export const POINTS_TEXT_MAX = 400_000;

/** A line of the file, its figures as they were written; empty ones are left as they are. */
export interface PointLine {
  /** Counted as an editor counts, from 1. */
  readonly line: number;
  /** The hardpoint's id, its name or its number. */
  readonly point: string;
  readonly at: readonly [x: string, y: string, z: string];
}

export interface PointTable {
  /** What a bare number is in; undefined if the head names no unit. */
  readonly unit: LengthUnit | undefined;
  readonly lines: readonly PointLine[];
}

const plain = (text: string) => text.trim().toLowerCase().replaceAll(/\s+/g, ' ');

const AXES = ['x', 'y', 'z'] as const;
const POINT_HEADS = ['point', 'name', 'number', 'no', 'no.'];
const UNITS: Readonly<Record<string, LengthUnit>> = {
  mm: 'mm',
  millimetres: 'mm',
  millimeters: 'mm',
  in: 'in',
  inch: 'in',
  inches: 'in',
};

/** "x, mm", "x (in)", "x [mm]", "x mm", "x": the axis and the unit that the head says. */
function axisOf(head: string): { axis: string; unit: string } | undefined {
  const [, axis, unit = ''] = /^([xyz])(?:[\s,([]+([a-z]+)[)\]]?)?$/.exec(plain(head)) ?? [];
  return axis === undefined ? undefined : { axis, unit };
}

/**
 * Reads a table of points; which points they are is not looked at here.
 * Outcomes: its lines, or the first thing that is wrong, by its line.
 */
export function readPointsCsv(text: string): Outcome<PointTable, string> {
  if (text.length > POINTS_TEXT_MAX)
    return failed(`a table of ${POINTS_TEXT_MAX.toLocaleString('en')} characters at most`);
  const bare = text.replace(/^\uFEFF/, '');
  const lines = linesOf(bare, delimiterOf(bare));
  if (!lines.ok) return lines;
  const [head, ...rest] = lines.value;
  if (!head) return failed('there is nothing in it');
  const found = head.cells.map(axisOf);
  const columns = AXES.map((axis) => found.findIndex((each) => each?.axis === axis));
  const missing = AXES.find((_, i) => columns[i] === -1);
  if (missing)
    return failed(
      `there is no column "${missing}": the first line has to say what each column is, as "${missing}, mm"`,
    );
  const named = POINT_HEADS.map((name) => head.cells.findIndex((cell) => plain(cell) === name)).filter(
    (at) => at >= 0,
  );
  if (named.length === 0) return failed('there is no column "point", "name" or "number"');
  const words = new Set(columns.map((at) => found[at]?.unit ?? ''));
  const [word = ''] = words;
  if (words.size > 1) return failed('x, y and z are not in one unit');
  const unit = UNITS[word];
  if (word !== '' && !unit) return failed(`${quoted(word)} is no unit: mm or in`);
  const points: PointLine[] = [];
  for (const { number, cells } of rest) {
    const cell = (at: number) => (cells[at] ?? '').replace(DEFUSED, '').trim();
    const point = named.map(cell).find((name) => name !== '') ?? '';
    const at = columns.map(cell) as [string, string, string];
    if (point === '' && at.every((figure) => figure === '')) continue;
    if (point === '') return failed(`line ${number}: has figures and no point`);
    points.push({ line: number, point, at });
  }
  if (points.length === 0) return failed('no line of it has a point');
  return succeeded({ unit, lines: points });
}

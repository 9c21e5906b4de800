import type { Point } from '../../../../shared-math/geometry/points.ts';
import { withValue } from '../../../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../../../shared-math/outcome.ts';
import { type Direction, directionOf, parseDirected } from '../../../document/directions.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';

/** Puts a value at a path of the open document as one step of undo; answers why not, if not. */
export function put(
  openLayout: OpenLayout,
  label: string,
  path: string,
  value: Outcome<unknown, string>,
): Outcome<unknown, string> {
  if (!value.ok) return value;
  if (!openLayout.document) return failed('no layout is open');
  return openLayout.edits.change(label, withValue(openLayout.document, path, value.value))
    ? succeeded(value.value)
    : failed(openLayout.edits.refusal);
}

/** The fields of a point: its three coordinates as a tape measure has them. */
export function directionsOf(at: Point): Direction[] {
  return ([0, 1, 2] as const).map((axis) => directionOf(axis, at[axis]));
}

/** A point with one coordinate as typed. */
export function withTyped(
  at: Point,
  direction: Direction,
  typed: string,
  unit: 'in' | 'mm',
): Outcome<Point, string> {
  const value = parseDirected(typed, direction, unit);
  if (!value.ok) return value;
  const to: [number, number, number] = [at[0], at[1], at[2]];
  to[direction.axis] = value.value;
  return succeeded(to);
}

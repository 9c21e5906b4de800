import { describe, expect, test } from 'vitest';
import {
  boxOf,
  drawLayout,
  type Outline,
  outline,
  type Part,
  paintOrder,
  placeAtRide,
  placeInPose,
  project,
  roomFor,
  VIEWS,
  type View,
} from '../../../shared-math/drawing/index.ts';
import { bodyAt, bodyPoints, resolveLayout } from '../../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../../shared-math/linkage/index.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';

function drawn(...obstacles: unknown[]) {
  const document = documentOf(rawLayout({ obstacles }));
  const drawing = drawLayout(resolveLayout(document));
  const placed = roomFor(drawing);
  placeAtRide(drawing, placed);
  const part = (id: string): Part => {
    const found = drawing.parts.find((candidate) => candidate.id === id);
    if (!found) throw new Error(`no part ${id}`);
    return found;
  };
  const lineOf = (id: string, view: View): Outline => {
    const line: Outline = [];
    outline(part(id).shapes[0] as Part['shapes'][number], placed, view, line);
    return line;
  };
  return {
    document,
    drawing,
    placed,
    part,
    boxOf: (id: string, view: View) => boxOf(lineOf(id, view)),
    lineOf,
  };
}

const named = { name: 'Thing', role: 'other', mirrored: false };
const BOX = { ...named, kind: 'box', centre: [-500, 40, 600], size: [300, 200, 100] };

describe('what is in the way', () => {
  test('a box is drawn to scale in all three views', () => {
    const shown = drawn(BOX);
    const size = (view: View) => {
      const { left, right, top, bottom } = shown.boxOf('obstacle-0', view);
      return [right - left, bottom - top].map((value) => Math.round(1000 * value) / 1000);
    };
    expect(size('side')).toEqual([300, 100]);
    expect(size('top')).toEqual([300, 200]);
    expect(size('front')).toEqual([200, 100]);
    for (const view of VIEWS) {
      const { left, right, top, bottom } = shown.boxOf('obstacle-0', view);
      expect([(left + right) / 2, (top + bottom) / 2]).toEqual([...project(view, [-500, 40, 600])]);
    }
  });

  test('a box turned from above is wider from ahead, and its corners are those that can be dragged', () => {
    const shown = drawn({ ...BOX, turn: 30 });
    const { left, right } = shown.boxOf('obstacle-0', 'front');
    expect(right - left).toBeCloseTo(300 * Math.sin(Math.PI / 6) + 200 * Math.cos(Math.PI / 6), 6);
    const body = bodyAt(shown.document, 'obstacles.0');
    const corners = (body ? bodyPoints(body) : []).filter(({ id }) => id.includes('corner'));
    expect(corners).toHaveLength(2);
    const line = shown.lineOf('obstacle-0', 'top');
    for (const { at } of corners) {
      const [x, y] = project('top', at);
      const nearest = line.reduce(
        (least, _, i) =>
          i % 2 ? least : Math.min(least, Math.hypot((line[i] as number) - x, (line[i + 1] as number) - y)),
        Number.POSITIVE_INFINITY,
      );
      expect(nearest).toBeLessThan(1e-6);
    }
  });

  test.each(['cylinder', 'capsule'])('a %s lies between its ends, as thick as it is', (kind) => {
    const tube = { ...named, kind, from: [-300, 250, 500], to: [-900, 250, 500], radius: 30 };
    const shown = drawn(tube);
    const round = kind === 'capsule' ? 30 : 0;
    for (const view of ['side', 'top'] as const) {
      const { left, right, top, bottom } = shown.boxOf('obstacle-0', view);
      expect(right - left).toBeCloseTo(600 + 2 * round, 0);
      expect(bottom - top).toBeCloseTo(60, 1);
    }
    const end = shown.boxOf('obstacle-0', 'front');
    expect(end.right - end.left).toBeCloseTo(60, 0);
  });

  test('mirrored, stands on both sides; the far one is known to be far', () => {
    const shown = drawn({ ...BOX, centre: [-500, 240, 600], mirrored: true });
    const one = shown.boxOf('obstacle-0', 'front');
    const other = shown.boxOf('obstacle-0-mirrored', 'front');
    expect(one.left).toBeCloseTo(-other.right, 9);
    expect(shown.part('obstacle-0').side).toBe('left');
    expect(shown.part('obstacle-0-mirrored').side).toBe('right');
  });

  test('stays with the frame as the axle rises, and lies under the front end', () => {
    const { document, drawing } = drawn(BOX);
    const frontEnd = prepareFrontEnd(resolveLayout(document));
    const state = createState();
    expect(solveFrontEnd(frontEnd, 60, 0, 3, state)).toBe('ok');
    const ride = roomFor(drawing);
    const posed = roomFor(drawing);
    placeAtRide(drawing, ride);
    placeInPose(drawing, frontEnd, state, posed);
    const part = drawing.parts.find(({ id }) => id === 'obstacle-0') as Part;
    const lines = [ride, posed].map((placed) => {
      const line: Outline = [];
      outline(part.shapes[0] as Part['shapes'][number], placed, 'side', line);
      return line;
    });
    expect(lines[1]).toEqual(lines[0]);
    for (const view of VIEWS) {
      const order = paintOrder(drawing, ride, view).map(({ id }) => id);
      expect(order.indexOf('obstacle-0')).toBeLessThan(order.indexOf('beam'));
      expect(order.indexOf('obstacle-0')).toBeLessThan(order.indexOf('drag-link'));
    }
  });
});

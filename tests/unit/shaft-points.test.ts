import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import {
  hardpoints,
  type LayoutDocument,
  moveHardpoint,
  readLayout,
} from '../../shared-math/layout/index.ts';
import { routeOf, slideOnAxis } from '../../shared-math/shaft/index.ts';
import { refusalSentence } from '../../src-renderer/document/refusal-sentences.ts';
import { pointGroups } from '../../src-renderer/panels/points/point-groups.ts';
import { bondWords } from '../../src-renderer/panels/points/shaft-words.ts';
import { expectClose } from '../support/close.ts';
import { documentOf, rawLayout } from '../support/layouts.ts';
import { rawShaft } from '../support/shafts.ts';

const MIDDLE = { kind: 'single', centre: [-1180, 390, 640] };
const [FIRST, LAST] = rawShaft()['joints'] as [unknown, unknown];
const two = () => documentOf(rawLayout({ shaft: rawShaft() }));
const three = () =>
  documentOf(
    rawLayout({ shaft: rawShaft({ joints: [FIRST, MIDDLE, LAST], shafts: [{ clock: 0 }, { clock: 0 }] }) }),
  );
const lone = () => documentOf(rawLayout({ shaft: rawShaft({ joints: [FIRST], shafts: [] }) }));

const pointOf = (document: LayoutDocument, id: string) =>
  hardpoints(document).find((point) => point.id === id)!;
const at = (document: LayoutDocument, id: string) => pointOf(document, id).at;
const plus = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const expectAt = (found: Point, wanted: Point, within = 1e-3) =>
  expectClose(Math.hypot(found[0] - wanted[0], found[1] - wanted[1], found[2] - wanted[2]), 0, within);

describe('the points of a shaft', () => {
  test('stand in the list from column to box, each once, fixed to the frame; without a shaft there are none', () => {
    const group = pointGroups(hardpoints(three())).find(({ title }) => title === 'Steering shaft')!;
    expect(group.rows.map(({ name }) => name)).toEqual([
      'Column end',
      'Joint 1',
      'Joint 2',
      'Joint 3',
      'Box input',
    ]);
    expect(group.rows.every(({ alone }) => alone?.carrier === 'frame')).toBe(true);
    expect(hardpoints(documentOf(rawLayout())).some(({ id }) => id.startsWith('shaft.'))).toBe(false);
  });

  test('the first joint slides on the column’s axis, the last on the box’s, one between goes where it is put', () => {
    const document = three();
    expect(
      ['shaft.joints.0.centre', 'shaft.joints.1.centre', 'shaft.joints.2.centre'].map(
        (id) => pointOf(document, id).slides,
      ),
    ).toEqual(['column', undefined, 'box']);
    const to: Point = [-1100, 300, 700];
    const slid = moveHardpoint(document, 'shaft.joints.0.centre', to);
    const { end, axis } = document.shaft!.column;
    expectAt(at(slid, 'shaft.joints.0.centre'), slideOnAxis(end, axis, to));
    expect(at(moveHardpoint(document, 'shaft.joints.1.centre', to), 'shaft.joints.1.centre')).toEqual(to);
  });

  test('dragged in a view a sliding joint follows the hand in that view; a single coordinate is met exactly', () => {
    const coordinate = fc.double({ min: -400, max: 400, noNaN: true }).filter((by) => Math.abs(by) > 0.01);
    fc.assert(
      fc.property(fc.constantFrom(0, 1, 2), coordinate, coordinate, (hidden, a, b) => {
        const document = two();
        const from = at(document, 'shaft.joints.0.centre');
        const to = [...from] as [number, number, number];
        const seen = [0, 1, 2].filter((axis) => axis !== hidden);
        to[seen[0]!]! += a;
        to[seen[1]!]! += b;
        const moved = moveHardpoint(document, 'shaft.joints.0.centre', to);
        expectClose(routeOf(moved.shaft!).column.off, 0, 2e-3, 'on the axis');
        // No other place of the axis is nearer to the hand as the view shows both.
        const { axis } = document.shaft!.column;
        const found = at(moved, 'shaft.joints.0.centre');
        const away = (by: number) => Math.hypot(...seen.map((i) => found[i]! + by * axis[i]! - to[i]!));
        expect(away(0)).toBeLessThanOrEqual(Math.min(away(0.05), away(-0.05)) + 1e-3);
      }),
      { seed: 61, numRuns: 100 },
    );
    const [x, y] = at(two(), 'shaft.joints.0.centre');
    const typed = moveHardpoint(two(), 'shaft.joints.0.centre', [x, y, 700]);
    expect(at(typed, 'shaft.joints.0.centre')[2]).toBe(700);
    expectClose(routeOf(typed.shaft!).column.off, 0, 2e-3);
  });

  test('a view that shows an axis end-on leaves the joint where it is', () => {
    const document = two();
    const from = at(document, 'shaft.joints.1.centre');
    // The box's axis runs along the car: seen from ahead it is a spot.
    const moved = moveHardpoint(document, 'shaft.joints.1.centre', [from[0], from[1] + 30, from[2] - 20]);
    expect(at(moved, 'shaft.joints.1.centre')).toEqual(from);
    // Nor does a coordinate that hardly changes along the axis send it far away.
    const first = at(document, 'shaft.joints.0.centre');
    const aside = moveHardpoint(document, 'shaft.joints.0.centre', [first[0], first[1] + 8, first[2]]);
    expect(at(aside, 'shaft.joints.0.centre')).toEqual(first);
  });

  test('column end and box input take the joint on them along, and nothing else', () => {
    const by: Point = [12, -7, 9];
    for (const [id, joint, others] of [
      [
        'shaft.column.end',
        'shaft.joints.0.centre',
        ['shaft.joints.1.centre', 'shaft.joints.2.centre', 'shaft.box.end'],
      ],
      [
        'shaft.box.end',
        'shaft.joints.2.centre',
        ['shaft.joints.0.centre', 'shaft.joints.1.centre', 'shaft.column.end'],
      ],
    ] as const) {
      const before = three();
      const after = moveHardpoint(before, id, plus(at(before, id), by));
      expectAt(at(after, joint), plus(at(before, joint), by));
      for (const other of others) expect(at(after, other)).toEqual(at(before, other));
      expect(pointOf(before, id).brings).toEqual([joint]);
      expect(after.shaft!.column.axis).toEqual(before.shaft!.column.axis);
    }
  });

  test('the steering box takes the shaft’s box end and the joint on it along; a lone joint stays on the column', () => {
    const by: Point = [-40, 15, 22];
    for (const document of [two(), three(), lone()]) {
      const from = document.steering.box.sectorCentre;
      const after = moveHardpoint(document, 'steering.box.sectorCentre', plus(from, by));
      const last = document.shaft!.joints.length - 1;
      expectAt(at(after, 'shaft.box.end'), plus(at(document, 'shaft.box.end'), by));
      expectAt(
        at(after, `shaft.joints.${last}.centre`),
        last === 0
          ? at(document, 'shaft.joints.0.centre')
          : plus(at(document, `shaft.joints.${last}.centre`), by),
      );
      expect(after.shaft!.box.axis).toEqual(document.shaft!.box.axis);
      expect(after.shaft!.column).toEqual(document.shaft!.column);
      expect(after.shaft!.joints.slice(0, -1)).toEqual(document.shaft!.joints.slice(0, -1));
      expect(readLayout(after).ok).toBe(true);
      expect(pointOf(document, 'steering.box.sectorCentre').brings).toContain('shaft.box.end');
    }
  });

  test('moving them leaves the document that they came from as it was', () => {
    const before = three();
    for (const { id, at: from } of hardpoints(before)) moveHardpoint(before, id, plus(from, [3, 2, 1]));
    expect(before).toEqual(three());
  });
});

describe('words', () => {
  test('what goes along is said of the box, the ends and the sliding joints', () => {
    const shaft = three().shaft!;
    expect(bondWords('steering.box.sectorCentre', shaft)).toMatch(/box end and joint 3 .* go along/);
    expect(bondWords('steering.box.sectorCentre', lone().shaft!)).not.toMatch(/joint/);
    expect(bondWords('shaft.joints.0.centre', shaft)).toMatch(/column/);
    expect(bondWords('shaft.joints.1.centre', shaft)).toBe('');
    expect(bondWords('shaft.joints.2.centre', shaft)).toMatch(/box/);
    expect(bondWords('steering.box.pitmanBall', shaft)).toBe('');
  });

  test('a refusal names the joint as the board does', () => {
    const document = three();
    const onFirst = moveHardpoint(document, 'shaft.joints.1.centre', at(document, 'shaft.joints.0.centre'));
    const read = readLayout(onFirst);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(refusalSentence(read.failure, hardpoints(document), document)).toBe(
      'Joint 2: on the same spot as joint 1: the shaft between them has no length',
    );
  });
});

import { describe, expect, test } from 'vitest';
import { adjust, type SurveyRow } from '../../../shared-math/adjust/index.ts';
import { type LayoutDocument, readLayout, resolveLayout } from '../../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../../shared-math/linkage/index.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';
import { measured, pointsOf, sideSteerRows } from '../../support/surveys.ts';

const document = documentOf(rawLayout());
const drawn = pointsOf(document);

function adjusted(rows: readonly SurveyRow[], of: LayoutDocument = document) {
  const outcome = adjust(of, rows);
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value;
}

const up = (of: string, value: number): SurveyRow => ({ id: `up ${of}`, kind: 'up', of, value });

describe('an adjustment', () => {
  test('of no rows at all leaves the drawing and knows nothing', () => {
    const found = adjusted([]);
    expect(pointsOf(found.document)).toEqual(drawn);
    expect(found.redundancy).toBe(0);
    const pivot = found.points.get('location.left.framePivot')!;
    expect(pivot.doubt.map(Math.round)).toEqual([250, 250, 250]);
    expect(pivot.free).toEqual(['x', 'y', 'z']);
    const wheel = found.points.get('axle.right.wheelCentre')!;
    expect(wheel.doubt[0]).toBe(0);
    expect(wheel.free).toEqual(['y', 'z']);
  });

  test('of rows that agree has no residuals, and every point that they hold is known', () => {
    const truth = Object.fromEntries(
      Object.entries(drawn).map(([id, [x, y, z]]) => [
        id,
        id === 'location.left.framePivot' || id === 'location.right.framePivot'
          ? ([x - 40, y + Math.sign(y) * 12, z + 9] as const)
          : ([x, y, z] as const),
      ]),
    );
    const found = adjusted(measured(sideSteerRows(), truth, drawn));
    for (const row of found.rows) expect(Math.abs(row.residual!)).toBeLessThan(0.02);
    const { at, doubt, free } = found.points.get('location.left.framePivot')!;
    for (const axis of [0, 1, 2]) expect(at[axis]).toBeCloseTo(truth['location.left.framePivot']![axis]!, 1);
    expect(Math.max(...doubt)).toBeLessThan(1.61);
    expect(free).toEqual([]);
    expect(found.rows.every(({ fits }) => fits !== false)).toBe(true);
  });

  test('moves a mirrored pair as one, and keeps the pair in the document', () => {
    const found = adjusted([
      { id: 'a', kind: 'out', of: 'location.right.framePivot', value: 402 },
      {
        id: 'b',
        kind: 'straight',
        from: 'location.left.framePivot',
        to: 'location.right.framePivot',
        value: 808,
      },
    ]);
    const left = found.points.get('location.left.framePivot')!;
    const right = found.points.get('location.right.framePivot')!;
    expect(right.at).toEqual([left.at[0], -left.at[1], left.at[2]]);
    expect(right.doubt).toEqual(left.doubt);
    expect(found.document.location).toMatchObject({ right: 'mirror' });
    // 402 at 1.6 mm; half of 808 is 404 at 0.8 mm: weighted by the squares, 4 to 1 for the second.
    expect(left.at[1]).toBeCloseTo((402 + 4 * 404) / 5, 2);
  });

  test("carries the tyre's radius with the wheel centres' height", () => {
    const found = adjusted([up('axle.left.wheelCentre', 341)]);
    expect(found.document.car.tyreRadius).toBeCloseTo(341, 2);
    expect(found.points.get('axle.right.wheelCentre')!.at[2]).toBe(found.document.car.tyreRadius);
    expect(readLayout(found.document).ok).toBe(true);
  });

  test('leaves a planned point where it stands, and the rows that look at it out', () => {
    const planned = { ...document, origins: { 'steering.box.pitmanBall': 'plan' } } as LayoutDocument;
    const rows = [
      up('steering.box.pitmanBall', 300),
      up('steering.dragLinkBall', 380),
      {
        id: 'link',
        kind: 'straight',
        from: 'steering.dragLinkBall',
        to: 'steering.box.pitmanBall',
        value: 700,
      },
      { id: 's', kind: 'steer-change', side: 'left', heave: 30, value: 1 },
    ] satisfies SurveyRow[];
    const found = adjusted(rows, planned);
    expect(found.points.get('steering.box.pitmanBall')).toEqual({
      at: drawn['steering.box.pitmanBall'],
      doubt: [0, 0, 0],
      free: [],
    });
    for (const id of [rows[0]!.id, 'link', 's'])
      expect(found.rows.find((row) => row.id === id)).toMatchObject({
        redundancy: null,
        w: null,
        fits: null,
        alike: [],
      });
    expect(found.rows[0]).toMatchObject({ observed: 300, computed: 350, residual: -50 });
    expect(found.points.get('steering.dragLinkBall')!.at[2]).toBeCloseTo(380, 1);
  });

  test('knows a planned pair under either of its names', () => {
    for (const id of ['axle.left.tieRodBall', 'axle.right.tieRodBall']) {
      const found = adjusted([up('axle.left.tieRodBall', 250)], {
        ...document,
        origins: { [id]: 'plan' },
      } as LayoutDocument);
      expect(found.points.get('axle.left.tieRodBall')!.at).toEqual(drawn['axle.left.tieRodBall']);
      expect(found.points.get('axle.right.tieRodBall')!.doubt).toEqual([0, 0, 0]);
    }
  });

  test('takes readings of steer: the wheels then steer as read', () => {
    const rows: SurveyRow[] = [30, 60].map((heave) => ({
      id: `at ${heave}`,
      kind: 'steer-change',
      side: 'right',
      heave,
      value: heave * 0.012,
    }));
    const found = adjusted(rows);
    const frontEnd = prepareFrontEnd(resolveLayout(found.document));
    const state = createState();
    const steer = (heave: number) => {
      expect(solveFrontEnd(frontEnd, heave, 0, 0, state)).toBe('ok');
      return (state.right.steer * 180) / Math.PI;
    };
    const ride = steer(0);
    for (const [i, heave] of [30, 60].entries()) {
      expect(found.rows[i]!.computed).toBeCloseTo(steer(heave) - ride, 8);
      expect(Math.abs(found.rows[i]!.residual!)).toBeLessThan(0.02);
    }
  });

  test('says out of reach by name if the drawing itself cannot be posed where a reading was taken', () => {
    const outcome = adjust(document, [
      { id: 's', kind: 'steer-change', side: 'left', heave: 1500, value: 1 },
    ]);
    expect(outcome).toEqual({ ok: false, failure: { kind: 'out-of-reach' } });
  });

  test('tells no bump steer where a pose of the travel is out of reach', () => {
    const far = documentOf(rawLayout({ travel: { bump: 950, rebound: 75, roll: 3 } }));
    expect(adjusted([], far).bumpSteer).toBeNull();
  });

  test('of rows that contradict is no failure: they do not fit, and are alike', () => {
    const found = adjusted([
      { id: 'one', kind: 'up', of: 'steering.dragLinkBall', value: 395 },
      { id: 'two', kind: 'up', of: 'steering.dragLinkBall', value: 425 },
    ]);
    expect(found.points.get('steering.dragLinkBall')!.at[2]).toBeCloseTo(410, 2);
    for (const row of found.rows) {
      expect(row.redundancy).toBeCloseTo(0.5, 4);
      expect(row.fits).toBe(false);
      // 15 over 1.6 and the root of a half.
      expect(Math.abs(row.w!)).toBeCloseTo(15 / 1.6 / Math.SQRT1_2, 2);
    }
    expect(found.rows[0]!.alike).toEqual(['two']);
    expect(found.redundancy).toBeCloseTo(1, 3);
  });
});

describe('the doubt of a change of steer', () => {
  const rows = measured(sideSteerRows(), drawn, drawn);
  const changes = [
    { of: 'left', heave: 40 },
    { of: 'left', heave: -40 },
    { of: 'mean', heave: 40 },
  ] as const;
  const covarianceOf = (all: readonly SurveyRow[]) => {
    const outcome = adjust(document, all, { changes });
    if (!outcome.ok || !outcome.value.changes) throw new Error('no doubt');
    return { found: outcome.value, covariance: outcome.value.changes };
  };

  test('is what a row that reads it has of its own doubt left unchecked: u² (1 - r)', () => {
    const read: SurveyRow = { id: 'gauge', kind: 'steer-change', side: 'left', heave: 40, value: 0 };
    const { covariance: before } = covarianceOf(rows);
    const value = -1 * (adjusted([...rows, read]).rows.at(-1)?.residual as number);
    const { found, covariance } = covarianceOf([...rows, { ...read, value }]);
    const redundancy = found.rows.at(-1)?.redundancy as number;
    expect(covariance[0]).toBeCloseTo(0.05 ** 2 * (1 - redundancy), 8);
    // Two independent readings of one thing: 1/v = 1/v_before + 1/u².
    expect(covariance[0]).toBeCloseTo(1 / (1 / (before[0] as number) + 1 / 0.05 ** 2), 6);
  });

  test('is symmetric, shared between bump and droop, and the worst bump steer’s where that is asked', () => {
    const { covariance } = covarianceOf(rows);
    expect(covariance[1]).toBeCloseTo(covariance[3] as number, 12);
    const shared =
      (covariance[1] as number) / Math.sqrt((covariance[0] as number) * (covariance[4] as number));
    expect(shared).toBeLessThan(-0.5);
    const { bumpSteer } = adjusted(rows);
    const outcome = adjust(document, rows, {
      changes: [-75, 75].map((heave) => ({ of: 'mean', heave }) as const),
    });
    const ends = outcome.ok ? outcome.value.changes : null;
    expect(
      [ends?.[0], ends?.[3]].some(
        (square) => Math.abs(Math.sqrt(square as number) - (bumpSteer?.doubt as number)) < 1e-6,
      ),
    ).toBe(true);
  });

  test('is null where none is asked or the heave is out of reach', () => {
    expect(adjusted(rows).changes).toBeNull();
    const outcome = adjust(document, rows, { changes: [{ of: 'left', heave: 3000 }] });
    expect(outcome.ok && outcome.value.changes).toBeNull();
  });
});

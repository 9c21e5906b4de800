import { describe, expect, test } from 'vitest';
import type { SurveyRow } from '../../../shared-math/adjust/index.ts';
import { geometricRow } from '../../../shared-math/adjust/row-kinds.ts';
import { layoutAt, unknownsOf } from '../../../shared-math/adjust/unknowns.ts';
import {
  createState,
  linkLengths,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../../shared-math/linkage/index.ts';
import { seededRandom } from '../../../shared-math/solve/random.ts';
import { demonstration } from '../../support/demonstration-files.ts';
import { documentOf, LATERALS, PLAIN_HALF, rawLayout } from '../../support/layouts.ts';

const skewed = documentOf(
  rawLayout({
    lateral: LATERALS.bar,
    axle: {
      beam: 'tube',
      left: PLAIN_HALF,
      right: {
        ...PLAIN_HALF,
        kingpinTop: [-12, -628, 398],
        kingpinBottom: [9, -651, 262],
        wheelCentre: [3, -712, 330],
        tieRodBall: [-146, -604, 290],
      },
    },
  }),
);
const alike = documentOf(rawLayout({ lateral: LATERALS.bar }));

const ROWS: SurveyRow[] = [
  { id: 'back', kind: 'back', of: 'location.right.framePivot', value: 890 },
  { id: 'out', kind: 'out', of: 'location.right.framePivot', value: 415 },
  { id: 'up', kind: 'up', of: 'axle.right.tieRodBall', value: 290 },
  {
    id: 'straight',
    kind: 'straight',
    from: 'steering.dragLinkBall',
    to: 'steering.box.pitmanBall',
    value: 800,
  },
  {
    id: 'across the car',
    kind: 'straight',
    from: 'axle.left.kingpinTop',
    to: 'axle.right.kingpinTop',
    value: 1262,
  },
  { id: 'plumb', kind: 'plumb', from: 'axle.right.wheelCentre', to: 'location.left.framePivot', value: 1400 },
  { id: 'level', kind: 'level', from: 'lateral.axle', to: 'lateral.frame', value: 18 },
  { id: 'behind', kind: 'behind', from: 'axle.right.kingpinTop', to: 'axle.right.tieRodBall', value: 130 },
  { id: 'across', kind: 'across', from: 'axle.right.tieRodBall', to: 'lateral.frame', value: 920 },
  { id: 'arm', kind: 'arm', of: 'steering.dragLinkBall', side: 'left', value: 150 },
  { id: 'other arm', kind: 'arm', of: 'axle.right.tieRodBall', side: 'right', value: 150 },
  { id: 'pitman arm', kind: 'sector-arm', of: 'steering.box.pitmanBall', value: 150 },
  { id: 'caster', kind: 'caster', side: 'right', value: 6 },
  { id: 'inclination', kind: 'inclination', side: 'right', value: 8 },
  { id: 'left inclination', kind: 'inclination', side: 'left', value: 8 },
];

describe.each([
  ['sides spelled out', skewed],
  ['mirrored sides', alike],
])('rows of a survey, %s', (_, document) => {
  const table = unknownsOf(document);
  const size = table.unknowns.length;
  const random = seededRandom(7);
  const x = Float64Array.from(table.unknowns, ({ drawn }) => drawn + 20 * (random() - 0.5));
  const kinds = ROWS.map((row) => [row.id, geometricRow(table, row)!] as const);

  test.each(kinds)('%s: derivatives agree with differences', (_name, row) => {
    const slopes = new Float64Array(size);
    row.addSlopes(x, slopes, 0);
    expect(slopes.some((slope) => slope !== 0)).toBe(true);
    for (let j = 0; j < size; j += 1) {
      const [further, back] = [1e-3, -1e-3].map((step) => row.value(x.with(j, x[j]! + step)));
      expect(slopes[j], `by ${table.unknowns[j]!.id} ${table.unknowns[j]!.axis}`).toBeCloseTo(
        (further! - back!) / 2e-3,
        7,
      );
    }
  });

  test.each(kinds.filter(([, row]) => row.subtractCurvature))(
    '%s: curvature agrees with differences',
    (_name, row) => {
      const hessian = new Float64Array(size * size);
      row.subtractCurvature!(x, -1, hessian, size);
      const slopesAt = (at: Float64Array) => {
        const slopes = new Float64Array(size);
        row.addSlopes(at, slopes, 0);
        return slopes;
      };
      for (let i = 0; i < size; i += 1) {
        const [further, back] = [1e-2, -1e-2].map((step) => slopesAt(x.with(i, x[i]! + step)));
        for (let j = 0; j <= i; j += 1)
          expect(hessian[i * size + j]! * 1e3).toBeCloseTo(((further![j]! - back![j]!) / 2e-2) * 1e3, 5);
      }
    },
  );

  test('caster, inclination and arms are those of the solved front end', () => {
    const frontEnd = prepareFrontEnd(layoutAt(table, x));
    const state = createState();
    solveFrontEnd(frontEnd, 0, 0, 0, state);
    const value = (id: string) => kinds.find(([name]) => name === id)![1].value(x);
    expect(value('caster')).toBeCloseTo((state.right.caster * 180) / Math.PI, 9);
    expect(value('inclination')).toBeCloseTo((state.right.kingpinInclination * 180) / Math.PI, 9);
    expect(value('left inclination')).toBeCloseTo((state.left.kingpinInclination * 180) / Math.PI, 9);
    expect(value('arm')).toBeCloseTo(linkLengths(frontEnd).steeringArm, 9);
    expect(value('other arm')).toBeCloseTo(linkLengths(frontEnd).rightTieRodArm, 9);
    expect(value('pitman arm')).toBeCloseTo(linkLengths(frontEnd).pitmanArm, 9);
    expect(value('straight')).toBeCloseTo(linkLengths(frontEnd).dragLink, 9);
  });
});

test('the side a point stands on as drawn is its positive side, and stays so', () => {
  const table = unknownsOf(alike);
  const row = geometricRow(table, { id: 'o', kind: 'out', of: 'location.right.framePivot', value: 1 })!;
  const x = Float64Array.from(table.unknowns, ({ drawn }) => drawn);
  expect(row.value(x)).toBe(415);
  const y = table.unknowns.findIndex(({ id, axis }) => id === 'location.left.framePivot' && axis === 1);
  expect(row.value(x.with(y, -3))).toBe(-3);
});

test('a pitman arm is as long as a caliper has it, square to its shaft, however far its ball stands along the shaft', () => {
  const document = demonstration('parallel-leaf-cross-steer');
  const table = unknownsOf(document);
  const value = (row: SurveyRow) =>
    geometricRow(table, row)!.value(Float64Array.from(table.unknowns, ({ drawn }) => drawn));
  const { sectorCentre, pitmanBall, sectorAxis } = document.steering.box;
  // By Pythagoras from what the layout's file holds: straight across, and along the shaft.
  const apart = pitmanBall.map((each, axis) => each - sectorCentre[axis]!);
  const along = apart.reduce((sum, each, axis) => sum + each * sectorAxis[axis]!, 0);
  const straight = Math.hypot(...apart);
  expect(Math.abs(along)).toBeGreaterThan(50);
  expect(value({ id: 'arm', kind: 'sector-arm', of: 'steering.box.pitmanBall', value: 150 })).toBeCloseTo(
    Math.sqrt(straight ** 2 - (along / Math.hypot(...sectorAxis)) ** 2),
    9,
  );
});

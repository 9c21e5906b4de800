import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  chiSquaredLimit,
  compareGauge,
  explainReadings,
  type Gauge,
  type GaugeReadings,
  type GaugeStation,
  readGaugeReadings,
  steerReading,
} from '../../../../shared-math/adjust/gauge/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import {
  type LayoutDocument,
  parseLayout,
  resolveLayout,
  type Side,
  withValue,
} from '../../../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { toDegrees } from '../../../../shared-math/units/index.ts';
import { documentOf, rawLayout } from '../../../support/layouts.ts';
import { seededNormal } from '../../../support/surveys.ts';

const HEAVES = [-60, -45, -30, -15, 0, 15, 30, 45, 60];

function demonstration(name: string): LayoutDocument {
  const outcome = parseLayout(readFileSync(`projects/${name}.json`, 'utf8'));
  if (!outcome.ok) throw new Error(outcome.failure.reason);
  return outcome.value;
}

/** A car as built: the layout with one point (sides spelled out) off. */
function built(document: LayoutDocument, id: string, off: Point): LayoutDocument {
  const spelled = resolveLayout(document) as unknown as LayoutDocument;
  const at = id
    .split('.')
    .reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], spelled) as Point;
  return withValue(spelled, id, [at[0] + off[0], at[1] + off[1], at[2] + off[2]]);
}

/** Toe-in that a side's wheel gains since ride height at each heave, degrees, straight from the linkage. */
function toeGained(document: LayoutDocument, side: Side): number[] {
  const frontEnd = prepareFrontEnd(resolveLayout(document));
  const state = createState();
  const toe = (heave: number) => {
    if (solveFrontEnd(frontEnd, heave, 0, 0, state) !== 'ok') throw new Error('no pose');
    return toDegrees(state[side].toeIn);
  };
  const ride = toe(0);
  return HEAVES.map((heave) => toe(heave) - ride);
}

function readingsOf(
  document: LayoutDocument,
  { sides = ['left'] as Side[], noise = (): number => 0, zero = 0, doubt = 0.05 } = {},
): GaugeReadings {
  const stations = sides.flatMap((side) =>
    toeGained(document, side).map(
      (toeIn, i): GaugeStation => ({
        id: `${side} ${HEAVES[i]}`,
        side,
        heave: HEAVES[i] as number,
        toeIn: toeIn + zero + doubt * noise(),
      }),
    ),
  );
  return { format: 'toeboard-gauge', version: 1, gauge: { kind: 'angle', doubt }, stations, plates: [] };
}

describe('a gauge’s reading as steer', () => {
  const station = (side: Side, front: number, rear: number): GaugeStation => ({
    id: 'a',
    side,
    heave: 25,
    front,
    rear,
  });
  const dials: Gauge = { kind: 'dials', spacing: 254 };

  test('a left wheel whose front moves out steers left, a right wheel’s to the right', () => {
    // atan(1/254) = 0.22557°, by hand.
    expect(steerReading(dials, station('left', 1, 0)).change).toBeCloseTo(0.22557, 4);
    expect(steerReading(dials, station('right', 1, 0)).change).toBeCloseTo(-0.22557, 4);
    expect(steerReading(dials, station('left', 0, 1)).change).toBeCloseTo(-0.22557, 4);
    expect(steerReading(dials, station('left', 3, 3)).change).toBe(0);
  });

  test('toe-in turns a left wheel to the right', () => {
    const angle: Gauge = { kind: 'angle' };
    expect(steerReading(angle, { id: 'a', side: 'left', heave: 25, toeIn: 0.4 }).change).toBe(-0.4);
    expect(steerReading(angle, { id: 'a', side: 'right', heave: 25, toeIn: 0.4 }).change).toBe(0.4);
  });

  test('two dials’ doubts make one of the angle', () => {
    // √2 · 0.05/254 rad = 0.01595°, by hand.
    expect(steerReading(dials, station('left', 0, 0)).doubt).toBeCloseTo(0.01595, 5);
    expect(steerReading({ ...dials, doubt: 0.1 }, station('left', 0, 0)).doubt).toBeCloseTo(0.0319, 4);
  });
});

// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, upper critical values at 0.001; from memory.
test.each([
  [2, 13.816],
  [5, 20.515],
  [10, 29.588],
  [20, 45.315],
  [30, 59.703],
])('chi-squared of %i degrees of freedom stays below its table’s value', (n, value) => {
  expect(Math.abs(chiSquaredLimit(n) / value - 1)).toBeLessThan(n < 5 ? 0.025 : 0.012);
});

describe('readings beside the layout', () => {
  const document = demonstration('hairpins-side-steer');

  test('a car that is as drawn agrees; each residual is nothing', () => {
    const outcome = compareGauge(document, readingsOf(document, { sides: ['left', 'right'] }));
    expect(outcome.ok && outcome.value.agrees).toBe(true);
    if (!outcome.ok) return;
    for (const { residual } of outcome.value.stations) expect(Math.abs(residual)).toBeLessThan(1e-9);
    expect(outcome.value.layoutDoubted).toBe(false);
  });

  test('999 of 1,000 noisy cars that are as drawn agree, and a zero that is off by its doubt is no fault', () => {
    const noise = seededNormal(4);
    let agreed = 0;
    for (let i = 0; i < 1000; i += 1) {
      const outcome = compareGauge(document, readingsOf(document, { noise, zero: 0.05 * noise() }));
      if (outcome.ok && outcome.value.sum <= outcome.value.limit) agreed += 1;
    }
    // 0.999 ± 3 standard deviations of 1,000 draws, Wilson and Hilferty's half percent of the limit among them.
    expect(agreed).toBeGreaterThanOrEqual(994);
    expect(agreed).toBeLessThan(1000.5);
  }, 60_000);

  test('a pitman ball an inch too high does not agree, and the layout’s own doubt can make room for it', () => {
    const readings = readingsOf(built(document, 'steering.box.pitmanBall', [0, 0, 25]));
    const outcome = compareGauge(document, readings);
    expect(outcome.ok && outcome.value.agrees).toBe(false);
    const count = readings.stations.length;
    // A layout known no better than 5° at each station, together.
    const wide = compareGauge(document, readings, new Float64Array(count * count).fill(25));
    expect(wide.ok && wide.value.stations.every(({ agrees }) => agrees)).toBe(true);
    expect(wide.ok && wide.value.layoutDoubted).toBe(true);
  });

  test('a station that the layout cannot reach is named, and so is nothing at all', () => {
    const readings = readingsOf(document);
    const beyond = { id: 'far', side: 'left' as const, heave: 2500, toeIn: 0 };
    const outcome = compareGauge(document, { ...readings, stations: [...readings.stations, beyond] });
    expect(outcome.ok ? '' : outcome.failure).toEqual({ kind: 'out-of-reach', reading: 'far' });
    const none = compareGauge(document, { ...readings, stations: [] });
    expect(none.ok ? '' : none.failure).toEqual({ kind: 'nothing-read' });
  });
});

describe('turning plates', () => {
  const document = demonstration('hairpins-side-steer');
  const frontEnd = prepareFrontEnd(resolveLayout(document));

  function platesAt(handwheel: number) {
    const state = createState();
    solveFrontEnd(frontEnd, 0, 0, 0, state);
    const straight = { left: state.left.steer, right: state.right.steer };
    solveFrontEnd(frontEnd, 0, 0, handwheel, state);
    const turned = { left: state.left.steer - straight.left, right: state.right.steer - straight.right };
    return {
      turn: turned.left > 0 ? ('left' as const) : ('right' as const),
      left: toDegrees(Math.abs(turned.left)),
      right: toDegrees(Math.abs(turned.right)),
    };
  }
  const readings = (plates: GaugeReadings['plates']): GaugeReadings => ({
    format: 'toeboard-gauge',
    version: 1,
    gauge: { kind: 'angle' },
    stations: [],
    plates,
  });

  test.each([3, -3, 6, -6])('wheels turned by %i rad of handwheel agree', (handwheel) => {
    const outcome = compareGauge(document, readings([{ id: 'p', ...platesAt(handwheel) }]));
    expect(outcome.ok && Math.abs(outcome.value.turns[0]?.residual as number)).toBeLessThan(1e-6);
  });

  test('an outer wheel three degrees off does not, and a turn beyond the linkage is named', () => {
    const plate = { id: 'p', ...platesAt(6) };
    const off = compareGauge(document, readings([{ ...plate, right: plate.right + 3 }]));
    expect(off.ok && off.value.agrees).toBe(false);
    const far = compareGauge(document, readings([{ ...plate, left: 80 }]));
    expect(far.ok ? '' : far.failure).toEqual({ kind: 'out-of-reach', reading: 'p' });
  });

  test('arms that are not alike are found by the plates', () => {
    const wrong = built(document, 'axle.right.tieRodBall', [0, 25, 0]);
    const state = createState();
    const other = prepareFrontEnd(resolveLayout(wrong));
    const plates = [4, -4, 7, -7].map((handwheel) => {
      solveFrontEnd(other, 0, 0, 0, state);
      const straight = { left: state.left.steer, right: state.right.steer };
      solveFrontEnd(other, 0, 0, handwheel, state);
      const left = toDegrees(state.left.steer - straight.left);
      const right = toDegrees(state.right.steer - straight.right);
      return {
        id: `${handwheel}`,
        turn: left > 0 ? ('left' as const) : ('right' as const),
        left: Math.abs(left),
        right: Math.abs(right),
      };
    });
    const outcome = explainReadings(document, { ...readings(plates), plateDoubt: 0.1 });
    expect(outcome.ok).toBe(true);
    if (!outcome.ok) return;
    const found = outcome.value.points.find(({ id }) => id === 'axle.right.tieRodBall');
    expect(found?.asGood).toBe(true);
    expect(found?.move[1]).toBeGreaterThan(15);
  });
});

describe('what would explain the readings', () => {
  const cars = [
    demonstration('hairpins-side-steer'),
    documentOf(rawLayout()),
    demonstration('parallel-leaf-cross-steer'),
  ];
  const offs: [string, Point][] = [
    ['steering.box.pitmanBall', [0, 0, -12]],
    ['steering.box.pitmanBall', [0, 0, 15]],
    ['location.left.framePivot', [0, 0, 20]],
  ];

  test.each(offs)('%s off by %j is named as the best or as good as it', (id, off) => {
    const having = cars.filter(({ location }) => !id.startsWith('location') || location.kind === 'hairpins');
    expect(having.length).toBeGreaterThan(0);
    for (const document of having) {
      const outcome = explainReadings(
        document,
        readingsOf(built(document, id, off), { sides: ['left', 'right'] }),
      );
      expect(outcome.ok).toBe(true);
      if (!outcome.ok) continue;
      const found = outcome.value.points.find((point) => point.id === id);
      expect(found?.asGood, document.name).toBe(true);
      expect(found?.fits).toBe(true);
      // The coordinate that is off moves the right way, by more than half of it; the prior pulls toward the drawing.
      expect((found?.move[2] as number) / off[2]).toBeGreaterThan(0.5);
      expect((found?.move[2] as number) / off[2]).toBeLessThan(1.5);
    }
  });

  test('the point that is off is among the best in at least 57 of 60 noisy readings', () => {
    const [document] = cars as [LayoutDocument];
    const noise = seededNormal(11);
    let named = 0;
    for (let i = 0; i < 60; i += 1) {
      const [id, off] = offs[i % offs.length] as [string, Point];
      const outcome = explainReadings(document, readingsOf(built(document, id, off), { noise }));
      if (outcome.ok && outcome.value.points.find((point) => point.id === id)?.asGood) named += 1;
    }
    expect(named).toBeGreaterThanOrEqual(57);
  }, 120_000);

  test('a car that is as drawn needs no explanation', () => {
    const [document] = cars as [LayoutDocument];
    const outcome = explainReadings(document, readingsOf(document, { noise: seededNormal(5) }));
    expect(outcome.ok && outcome.value.points).toEqual([]);
  });

  test('points that the readings cannot tell apart are given with what a tape would settle', () => {
    const [document] = cars as [LayoutDocument];
    const outcome = explainReadings(
      document,
      readingsOf(built(document, 'steering.box.pitmanBall', [0, 0, 20]), { noise: seededNormal(6) }),
    );
    expect(outcome.ok).toBe(true);
    if (!outcome.ok) return;
    const alike = outcome.value.points.filter(({ asGood }) => asGood);
    expect(alike.length).toBeGreaterThan(1);
    const measure = outcome.value.measures.find(({ id }) => id === 'steering.box.pitmanBall');
    expect(measure?.axis).toBe('z');
    expect(measure?.drawn).toBe(document.steering.box.pitmanBall[2]);
    expect((measure?.expected as number) - (measure?.drawn as number)).toBeGreaterThan(10);
  });
});

describe('a file of readings', () => {
  const good = readingsOf(demonstration('hairpins-side-steer'));

  test('is taken as it is', () => {
    expect(readGaugeReadings(JSON.parse(JSON.stringify(good)))).toEqual({ ok: true, value: good });
  });

  test.each([
    ['not an object', [], /expected an object/],
    [
      'dials without a rear',
      { ...good, gauge: { kind: 'dials', spacing: 254 } },
      /stations\[0\].*front is missing/,
    ],
    ['two of a name', { ...good, stations: [good.stations[0], good.stations[0]] }, /stations\[1\].*its own/],
    ['a spacing of nothing', { ...good, gauge: { kind: 'dials', spacing: 0 } }, /gauge.spacing/],
    ['a heave that is no number', { ...good, stations: [{ ...good.stations[0], heave: null }] }, /heave/],
  ])('%s is refused in a line', (_, input, line) => {
    const outcome = readGaugeReadings(input);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(`${outcome.failure.path} ${outcome.failure.reason}`).toMatch(line);
  });
});

import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import {
  type ArmMaking,
  armBending,
  bentStrutLoad,
  columnLoad,
  linkBears,
  linkMaking,
  roundSection,
} from '../../shared-math/links/index.ts';
import { expectClose } from '../support/close.ts';
import { layoutOf } from '../support/layouts.ts';

const A36 = { yield: 250, modulus: 200_000, source: '' };

describe('a straight strut between pins', () => {
  // Hibbeler, Mechanics of Materials, example 13.1: a tube of A-36 steel, radii 75 and 70 mm, 7.2 m between pins, E 200 GPa.
  test('a textbook’s tube of 150 mm, 7.2 m long, buckles at 228.2 kN', () => {
    const { load, by } = columnLoad(roundSection(150, 5), 7200, A36);
    expectClose(load / 1000, 228.2, 0.05);
    expect(by).toBe('euler');
  });

  // Gere, Mechanics of Materials, problem 11.4-2 of the solutions: 40 by 36 mm, 1.2 m, E 210 GPa: I = 43.22e3 mm⁴, 62.2 kN;
  // the problem asks for Euler's load alone, so the yield here is one that it never meets.
  test('a textbook’s pipe of 40 mm, 1.2 m long, buckles at 62.2 kN', () => {
    const section = roundSection(40, 2);
    expectClose(section.inertia / 1000, 43.22, 0.005);
    const { load } = columnLoad(section, 1200, { yield: 1000, modulus: 210_000, source: '' });
    expectClose(load / 1000, 62.2, 0.05);
  });

  // Hibbeler, example 13.2: where Euler's stress is above the yield, the yield is what counts. Johnson's parabola begins there.
  test('with no length to speak of it bears its yield', () => {
    const section = roundSection(22, 4);
    const { load, by } = columnLoad(section, 1, A36);
    expectClose(load, 250 * section.area, 1);
    expect(by).toBe('johnson');
  });

  test('the parabola meets Euler’s curve at half the yield, with the same slope', () => {
    const section = roundSection(25, 3);
    // The limit for 250 N/mm² and 200 GPa is 125.66, as tables for A36 have it (126.1 with 29,000 ksi and 36 ksi).
    const { limit } = columnLoad(section, 100, A36);
    expectClose(limit, 125.66, 0.01);
    expectClose(columnLoad(section, 100, { yield: 36, modulus: 29_000, source: '' }).limit, 126.1, 0.05);
    const at = (slenderness: number) => columnLoad(section, slenderness * section.gyration, A36).load;
    expectClose(at(limit) / section.area, 125, 1e-9);
    const h = 1e-4;
    const [below, above] = [(at(limit) - at(limit - h)) / h, (at(limit + h) - at(limit)) / h];
    expect(Math.abs(below / above - 1)).toBeLessThan(1e-4);
  });

  // Independent of any formula: the lowest P at which E I w'' + P w = 0 has a shape, on 200 pieces, by singular values.
  test('Euler’s load is the lowest at which a beam on finite differences has a bowed shape', () => {
    const [length, n] = [900, 200];
    const section = roundSection(22, 4);
    const stiffness = A36.modulus * section.inertia;
    const h = length / n;
    const second = Matrix.zeros(n - 1, n - 1);
    for (let i = 0; i < n - 1; i += 1) {
      second.set(i, i, 2 / h ** 2);
      if (i > 0) second.set(i, i - 1, -1 / h ** 2);
      if (i < n - 2) second.set(i, i + 1, -1 / h ** 2);
    }
    const values = new SingularValueDecomposition(second).diagonal;
    const lowest = stiffness * Math.min(...values);
    const { load, by } = columnLoad(section, length, { ...A36, yield: 414 });
    expect(by).toBe('euler');
    expect(Math.abs(load / lowest - 1)).toBeLessThan(1e-4);
  });
});

describe('a bent strut', () => {
  const section = roundSection(22, 4);
  const strength = { yield: 414, modulus: 200_000, source: '' };

  test.each([1, 10, 40, 150])(
    'bent by %d mm: the fibre in the middle of a bowed beam is at its yield',
    (offset) => {
      const length = 900;
      const load = bentStrutLoad(section, length, strength, offset);
      // Finite differences: E I (w - w0)'' + P w = 0 with w0 half a sine, so E I w'' + P w = E I w0''.
      const n = 400;
      const h = length / n;
      const stiffness = strength.modulus * section.inertia;
      const a = Matrix.zeros(n - 1, n - 1);
      const b = Matrix.zeros(n - 1, 1);
      for (let i = 0; i < n - 1; i += 1) {
        a.set(i, i, (-2 * stiffness) / h ** 2 + load);
        if (i > 0) a.set(i, i - 1, stiffness / h ** 2);
        if (i < n - 2) a.set(i, i + 1, stiffness / h ** 2);
        b.set(i, 0, -stiffness * offset * (Math.PI / length) ** 2 * Math.sin((Math.PI * (i + 1)) / n));
      }
      const w = new SingularValueDecomposition(a, { autoTranspose: true }).solve(b);
      const bow = w.get(n / 2 - 1, 0);
      const stress = load / section.area + (load * bow * 11) / section.inertia;
      expect(Math.abs(stress / 414 - 1)).toBeLessThan(1e-4);
    },
  );

  test('a bow of nothing leaves the lesser of yield and Euler', () => {
    for (const length of [50, 300, 900, 1800]) {
      const euler = (Math.PI ** 2 * strength.modulus * section.inertia) / length ** 2;
      expectClose(bentStrutLoad(section, length, strength, 0), Math.min(euler, 414 * section.area), 1e-6);
    }
  });

  // Pulled: by hand at the bend, P/A + P o c/I.
  test('a bent link that is pulled yields by pull and bending together', () => {
    const layout = layoutOf({
      diameters: { dragLink: 22 },
      links: { dragLink: { wall: 4, material: 'drawn-steel', offset: 30 } },
    });
    const bears = linkBears(linkMaking(layout, 'dragLink'), 800);
    const [area, inertia] = [226.195, 9613.28];
    expectClose(bears.pull, 414 / (1 / area + (30 * 11) / inertia), 1);
    expect(bears.pullBy).toBe('bend');
    expect(bears.push).toBeLessThan(bears.pull);
    expect(bears.assumed).toBe(true);
  });
});

describe('an arm at its boss', () => {
  const making = (width: number, thickness: number): ArmMaking => ({
    width: { value: width, assumed: false },
    thickness: { value: thickness, assumed: false },
    material: { value: 'mild-steel', assumed: false },
  });

  // By hand: 6 in arm straight down, shaft across the car; 1000 N along the car turns it by 152.4 N·m, and bends a bar of
  // 38.1 by 19.05 mm on edge by 6 M/(h w²).
  test('a straight arm bends by force times length', () => {
    const bent = armBending(making(38.1, 19.05), [0, 0, 0], [0, 1, 0], [0, 0, -152.4], [1000, 0, 0]);
    expectClose(Math.abs(bent.swing), 152_400, 1e-6);
    expectClose(bent.side, 0, 1e-9);
    expectClose(bent.twist, 0, 1e-9);
    expectClose(bent.stress, (6 * 152_400) / (19.05 * 38.1 ** 2), 1e-6);
    expectClose(bent.share, bent.stress / 250, 1e-12);
  });

  // By hand: the ball 40 mm out along the shaft twists the arm by 40 N·m beside the bending.
  test('a dropped arm is twisted by its drop', () => {
    const bent = armBending(making(38.1, 19.05), [0, 0, 0], [0, 1, 0], [0, 40, -152.4], [1000, 0, 0]);
    expectClose(Math.abs(bent.twist), 40_000, 1e-6);
    expectClose(bent.drop, 40, 1e-12);
    // And a force along the shaft bends it flat by force times length.
    const side = armBending(making(38.1, 19.05), [0, 0, 0], [0, 1, 0], [0, 0, -152.4], [0, 500, 0]);
    expectClose(Math.abs(side.side), 76_200, 1e-6);
    expectClose(side.stress, (6 * 76_200) / (38.1 * 19.05 ** 2), 1e-6);
  });

  // The series of Saint-Venant for a twisted bar of right angles: greatest shear T/(α b t²).
  test.each([1, 1.5, 2, 4, 10])(
    'twist of a bar %d times as wide as thick is the series’ to 5 in 100',
    (ratio) => {
      const t = 20;
      const b = ratio * t;
      let [sum, turned] = [0, 0];
      for (let n = 1; n < 200; n += 2) {
        sum += 1 / (n * n * Math.cosh((n * Math.PI * b) / (2 * t)));
        turned += Math.tanh((n * Math.PI * b) / (2 * t)) / n ** 5;
      }
      const peak = 1 - (8 / Math.PI ** 2) * sum;
      const stiff = (1 / 3) * (1 - ((192 * t) / (Math.PI ** 5 * b)) * turned);
      const shear = (1000 * peak) / (stiff * b * t * t);
      // Twist alone: the ball far out along the axis, a force across it with the bending taken out.
      const bent = armBending(making(b, t), [0, 0, 0], [0, 1, 0], [0, 1e9, -1e-3], [1e-6, 0, 0]);
      expectClose(Math.abs(bent.twist), 1000, 1e-6);
      expect(Math.abs(bent.stress / Math.sqrt(3) / shear - 1)).toBeLessThan(0.05);
    },
  );
});

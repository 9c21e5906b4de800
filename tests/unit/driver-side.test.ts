import { describe, expect, test } from 'vitest';
import { proposeArrangements } from '../../shared-math/arrange/index.ts';
import { analyse, findings } from '../../shared-math/findings/index.ts';
import {
  drawnInputAngle,
  driverSideOf,
  type LayoutDocument,
  readLayout,
  refusalLine,
  resolveLayout,
  steeringSide,
  withDriverSide,
  withSteeringMirrored,
  withValue,
} from '../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { firstShaft } from '../../shared-math/shaft/index.ts';
import { expectClose } from '../support/close.ts';
import { documentOf, LATERALS, rawLayout, STEERED } from '../support/layouts.ts';
import { rawShaft } from '../support/shafts.ts';

const FACTS = { frameWidth: 740, engineFillsFrame: false, driven: 'town' } as const;
const SOME = STEERED.filter((_, i) => i % 5 === 0);

function taken(document: LayoutDocument): LayoutDocument {
  const read = readLayout(document);
  if (!read.ok) throw new Error(refusalLine(read.failure));
  return read.value;
}

describe('the steering on the other side', () => {
  test.each(SOME)('is the mirror image, and left on the handwheel still steers left: $label', ({ over }) => {
    const document = documentOf(rawLayout(over));
    const other = taken(withSteeringMirrored(document));
    expect(other.steering.dragLinkTo).not.toBe(document.steering.dragLinkTo);
    const state = createState();
    const mirror = createState();
    const at = (heave: number, roll: number, wheel: number) => {
      const ok = solveFrontEnd(prepareFrontEnd(resolveLayout(document)), heave, roll, wheel, state);
      expect(solveFrontEnd(prepareFrontEnd(resolveLayout(other)), heave, -roll, -wheel, mirror)).toBe(ok);
      if (ok !== 'ok') return;
      expectClose(mirror.left.steer, -state.right.steer, 1e-9);
      expectClose(mirror.right.steer, -state.left.steer, 1e-9);
    };
    at(30, 0.02, 2);
    at(-40, -0.03, -3);
    at(0, 0, 4);
  });

  test('takes bar and shaft along, turns the clocking about, and comes back the same', () => {
    const document = documentOf(
      rawLayout({
        lateral: LATERALS.bar,
        shaft: rawShaft({ shafts: [{ clock: 40 }] }),
        studs: { 'lateral.axle': [1, 2, 3], 'axle.left.tieRodBall': [1, 2, 3] },
      }),
    );
    const other = taken(withSteeringMirrored(document));
    expect(other.lateral).toMatchObject({ axle: [-72, 520, 352], frame: [-72, -316, 370] });
    expect(other.shaft?.column.end).toEqual([-1390, -330, 760]);
    expect(other.shaft?.shafts[0]?.clock).toBe(-40);
    expect(other.studs).toEqual({ 'lateral.axle': [1, -2, 3], 'axle.left.tieRodBall': [1, 2, 3] });
    expect(withSteeringMirrored(other)).toEqual(document);
  });

  test('is where it goes when the driver is put there, and not when it is drawn there', () => {
    const document = documentOf(rawLayout());
    expect(driverSideOf(document)).toBe('left');
    const right = withDriverSide(document, 'right');
    expect([right.car.driverSide, steeringSide(right)]).toEqual(['right', 'right']);
    const { driverSide: _, ...car } = right.car;
    const unsaid = { ...right, car };
    expect(driverSideOf(unsaid)).toBe('right');
    expect(withDriverSide(unsaid, 'right').steering).toBe(unsaid.steering);
  });
});

describe('what is laid out for a driver on the right', () => {
  test.each(SOME)('is the mirror image of what is laid for one on the left: $label', ({ over }) => {
    const document = documentOf(rawLayout(over));
    for (const engineFillsFrame of [false, true]) {
      const facts = { ...FACTS, engineFillsFrame };
      const left = proposeArrangements(withDriverSide(document, 'left'), facts);
      const right = proposeArrangements(withDriverSide(document, 'right'), facts);
      for (const [i, arrangement] of right.entries()) {
        const { document: laid, figures } = arrangement;
        const mate = left[i] as typeof arrangement;
        expect(laid.steering.box.sectorCentre[1]).toBeLessThan(0);
        expect(taken(withSteeringMirrored(laid)).steering).toEqual(mate.document.steering);
        expectClose(figures?.worstBumpSteer as number, mate.figures?.worstBumpSteer as number, 1e-6);
        expectClose(figures?.overallRatio as number, mate.figures?.overallRatio as number, 1e-6);
        const told = findings(analyse(resolveLayout(laid)), { unit: 'mm', fraction: 16 });
        expect(told.find(({ rule }) => rule === 'box-direction')?.severity).toBe('info');
        expect(told.find(({ rule }) => rule === 'driver-side')?.severity).toBe('info');
      }
    }
  });

  test('of a right-hand car that says nothing of it is laid on the right as well', () => {
    const document = withSteeringMirrored(documentOf(rawLayout()));
    for (const { document: laid } of proposeArrangements(document, FACTS)) {
      expect(laid.steering.box.sectorCentre[1]).toBeLessThan(0);
      expect(laid.car).toEqual(document.car);
    }
  });

  test('a first shaft begins at a column on the driver’s side, and at an input square to the sector shaft', () => {
    const document = documentOf(rawLayout());
    for (const side of ['left', 'right'] as const)
      for (const { document: laid } of proposeArrangements(withDriverSide(document, side), FACTS)) {
        const shaft = firstShaft(laid);
        expect(Math.sign(shaft.column.end[1])).toBe(side === 'left' ? 1 : -1);
        expectClose(drawnInputAngle({ ...laid, shaft }) as number, 90, 0.05);
      }
    // Whatever box is drawn: a sector shaft along the car has its input from above.
    const along = withValue(document, 'steering.box.sectorAxis', [1, 0, 0]);
    expectClose(drawnInputAngle({ ...along, shaft: firstShaft(along) }) as number, 90, 0.05);
  });

  test('a shaft that is drawn goes to the side and keeps an input that the box can have', () => {
    const document = documentOf(rawLayout({ shaft: rawShaft() }));
    for (const { document: laid } of proposeArrangements(
      withValue(document, 'car.driverSide', 'right'),
      FACTS,
    )) {
      expect(laid.shaft?.column.end[1]).toBe(-330);
      expectClose(drawnInputAngle(laid) as number, 90, 0.05);
    }
  });
});

import { describe, expect, test } from 'vitest';
import { adjust, unknownsOf } from '../../../shared-math/adjust/index.ts';
import { rowsAsDrawn, surveyList } from '../../../shared-math/adjust/list/index.ts';
import { hardpoints, type LayoutDocument, withValue } from '../../../shared-math/layout/index.ts';
import { photosFurther } from '../../../shared-math/trace/index.ts';
import { severityDoubtWords } from '../../../src-renderer/panels/findings/doubt-words.ts';
import {
  CARS_TRIED,
  carsAllowed,
  verdictDoubtJob,
} from '../../../src-renderer/panels/findings/verdict-doubt-job.ts';
import { judged } from '../../../src-renderer/panels/findings/verdict-job.ts';
import { type SeverityCounts, severityCounts } from '../../../src-renderer/panels/findings/verdict-list.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';
import { CLICKS_ONLY, guessedCar, lots, photoOf, RADIANS } from '../../support/photo-world.ts';

const document = documentOf(rawLayout());
const rows = rowsAsDrawn(document, surveyList(document)).map((row) => ({ ...row, doubt: 1.6 }));
const KEY = 'bump-steer-worst steering.box.pitmanBall';

function counted(of: typeof document, doubt: number): SeverityCounts {
  const measured = rowsAsDrawn(of, surveyList(of)).map((row) => ({ ...row, doubt }));
  const job = verdictDoubtJob({ document: of, rows: measured, photosAside: undefined, limits: {} });
  for (;;) {
    const step = job.next();
    if (step.done) return severityCounts(step.value);
  }
}

function bumpSteer(of: typeof document) {
  const question = {
    document: of,
    clearances: undefined,
    style: { unit: 'mm', fraction: 16 },
    limits: {},
  } as const;
  return judged(question).findings.find(({ rule }) => rule === 'bump-steer-worst')?.severity;
}

describe('findings within the doubt of measuring', () => {
  test('every car tried is judged, and measured to a hundredth all are as drawn', () => {
    const counts = counted(document, 0.01)[KEY];
    const severity = bumpSteer(document)!;
    expect(counts?.[severity]).toBe(CARS_TRIED);
    expect(severityDoubtWords(counts!, severity)).toBe('');
  });

  test('a pitman ball whose bump steer lies at a limit is judged either way within a tape', () => {
    // Lowered until the verdict turns: from there a sixteenth decides.
    const [x, y, z] = document.steering.box.pitmanBall;
    const lowered = (by: number) => withValue(document, 'steering.box.pitmanBall', [x, y, z - by]);
    let [above, below] = [0, 120];
    const first = bumpSteer(document);
    expect(bumpSteer(lowered(below))).not.toBe(first);
    for (let step = 0; step < 20; step += 1) {
      const middle = (above + below) / 2;
      if (bumpSteer(lowered(middle)) === first) above = middle;
      else below = middle;
    }
    const car = lowered(above);
    const counts = counted(car, 1.6)[KEY]!;
    expect(severityDoubtWords(counts, bumpSteer(car)!)).toMatch(
      /^Within the doubt of measuring it could just as well be .+ \(\d+ of 12\)/,
    );
  });

  test('the same measurements are judged the same at every asking', () => {
    expect(rows.length).toBeGreaterThan(20);
    expect(counted(document, 1.6)).toEqual(counted(document, 1.6));
  });
});

describe('cars that photos allow', () => {
  const BALL = 'steering.box.pitmanBall';
  const shot = (view: 'side' | 'top', seed: number) =>
    photoOf({ view, away: 4000, askew: 12 * RADIANS, focal: 35 }, lots(seed), { slips: CLICKS_ONLY });
  const guessed: LayoutDocument = { ...guessedCar(), photos: [shot('side', 1), shot('top', 2)] };
  const found = adjust(guessed, [], { further: photosFurther([]), pointsOnly: true });
  if (!found.ok) throw new Error('the photos are not adjusted');
  const traced = found.value.document;
  const at = (car: LayoutDocument) => hardpoints(car).find(({ id }) => id === BALL)!.at;

  test('spread a traced point as the adjustment’s covariance has it, about where it lies', () => {
    const { doubt } = found.value.points.get(BALL)!;
    const cars = [...carsAllowed({ document: traced, rows: [], photosAside: [] }, 150)];
    const places = cars.flatMap((car) => (car ? [at(car)] : []));
    expect(places.length).toBe(150);
    for (const axis of [0, 1, 2] as const) {
      const mean = places.reduce((sum, place) => sum + place[axis], 0) / places.length;
      const spread = Math.sqrt(
        places.reduce((sum, place) => sum + (place[axis] - mean) ** 2, 0) / (places.length - 1),
      );
      // Of 150 numbers of a normal distribution the spread is within 24 per cent of its own in all but 1 of 10,000 (chi-squared).
      expect(Math.abs(spread / doubt[axis] - 1)).toBeLessThan(0.24);
      expect(Math.abs(mean - at(traced)[axis])).toBeLessThan(0.4 * doubt[axis]);
    }
  });

  test('leave a traced point where it is drawn if what the photos show of it is left aside', () => {
    const marks = [...photosFurther([])(unknownsOf(traced)).observed].flatMap(([row, { kind }]) =>
      kind === 'mark' ? [row] : [],
    );
    expect(marks.length).toBeGreaterThan(5);
    const [car] = [...carsAllowed({ document: traced, rows: [], photosAside: marks }, 1)];
    for (const axis of [0, 1, 2] as const)
      expect(Math.abs(at(car!)[axis] - at(traced)[axis])).toBeLessThan(0.01);
  });
});

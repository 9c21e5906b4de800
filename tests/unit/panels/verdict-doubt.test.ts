import { describe, expect, test } from 'vitest';
import { rowsAsDrawn, surveyList } from '../../../shared-math/adjust/list/index.ts';
import { withValue } from '../../../shared-math/layout/index.ts';
import { severityDoubtWords } from '../../../src-renderer/panels/findings/doubt-words.ts';
import { CARS_TRIED, verdictDoubtJob } from '../../../src-renderer/panels/findings/verdict-doubt-job.ts';
import { judged } from '../../../src-renderer/panels/findings/verdict-job.ts';
import { type SeverityCounts, severityCounts } from '../../../src-renderer/panels/findings/verdict-list.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';

const document = documentOf(rawLayout());
const rows = rowsAsDrawn(document, surveyList(document)).map((row) => ({ ...row, doubt: 1.6 }));
const KEY = 'bump-steer-worst steering.box.pitmanBall';

function counted(of: typeof document, doubt: number): SeverityCounts {
  const measured = rowsAsDrawn(of, surveyList(of)).map((row) => ({ ...row, doubt }));
  const job = verdictDoubtJob({ document: of, rows: measured, limits: {} });
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
      /^Within the doubt of measuring it may as well be .+ \(\d+ of 12\)/,
    );
  });

  test('the same measurements are judged the same at every asking', () => {
    expect(rows.length).toBeGreaterThan(20);
    expect(counted(document, 1.6)).toEqual(counted(document, 1.6));
  });
});

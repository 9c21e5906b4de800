import { describe, expect, test } from 'vitest';
import { analyse, findings, withClearances } from '../../../shared-math/findings/index.ts';
import { type LayoutDocument, readLayout, resolveLayout } from '../../../shared-math/layout/index.ts';
import { propose, withSteeringForgotten } from '../../../shared-math/propose/index.ts';
import { type FreedomName, freedomNamed } from '../../../shared-math/tune/index.ts';
import { toDegrees } from '../../../shared-math/units/index.ts';
import { DEMONSTRATIONS } from '../../support/demonstration-files.ts';
import { INCHES } from '../../support/judged-car.ts';

// The search held against a coarse exhaustive grid over three freedoms of each demonstration, about the steering that its
// builder drew: the grid lays its documents by moving points, and knows nothing of the search.

const MOVED: readonly FreedomName[] = ['box-along', 'link-end-up', 'arm-ball-up'];
const STEPS = [-50, 0, 50];
const SMALL = [-10, 0, 10];

const OF_THE_CAR = /^(caster|toe|bind|beam|tyre-and|shaft)/;
/** Gaps of what stands still, and of the shaft, which the grid does not lead to the moved box. */
const STANDS = /^(tie-rod|shaft)/;

/** Worst bump steer, degrees, over heave and with one wheel; undefined where a limit of the steering is passed. */
function bumpWithinLimits(document: LayoutDocument): number | undefined {
  const read = readLayout(document);
  if (!read.ok) return undefined;
  const analysis = withClearances(analyse(resolveLayout(read.value)));
  const past = findings(analysis, INCHES).some(
    ({ severity, rule, between }) =>
      severity === 'stop' ||
      (severity === 'attention' &&
        !OF_THE_CAR.test(rule) &&
        !between?.parts.some((part) => STANDS.test(part))),
  );
  if (past || analysis.oneWheel.status !== 'ok') return undefined;
  return toDegrees(Math.max(analysis.heaveSummary.worstBumpSteer, analysis.oneWheel.worst));
}

function gridBest(document: LayoutDocument): number {
  let best = Number.POSITIVE_INFINITY;
  const [along, up, arm] = MOVED.map((name) => freedomNamed(name));
  if (!along || !up || !arm) throw new Error('no such freedom');
  for (const x of STEPS)
    for (const z of SMALL)
      for (const height of STEPS) {
        const moved = arm.move(up.move(along.move(document, x), z), height);
        best = Math.min(best, bumpWithinLimits(moved) ?? Number.POSITIVE_INFINITY);
      }
  return best;
}

describe('the search beside an exhaustive grid', () => {
  test.each(DEMONSTRATIONS)(
    'is never worse than the grid’s best: %s',
    { timeout: 300_000 },
    (_file, document) => {
      const grid = gridBest(document);
      // The way of steering and the box that are drawn, as the grid has them; all else of the steering is forgotten.
      const search = propose({
        document: withSteeringForgotten(document),
        held: ['way', 'box-kind', 'tie-rod', 'lateral'],
        style: INCHES,
      });
      let step = search.next();
      while (!step.done) step = search.next();
      const { proposals } = step.value;
      expect(proposals.length).toBeGreaterThan(0);
      expect(proposals.length).toBeLessThanOrEqual(6);
      const least = Math.min(
        ...proposals.map(({ layout }) => bumpWithinLimits(layout) ?? Number.POSITIVE_INFINITY),
      );
      if (process.env['TOEBOARD_FIGURES']) console.info(_file, { grid, least });
      expect(least).toBeLessThanOrEqual(1.02 * grid);
      for (const { layout } of proposals) {
        const analysis = withClearances(analyse(resolveLayout(layout)));
        expect(findings(analysis, INCHES).filter(({ severity }) => severity === 'stop')).toEqual([]);
      }
    },
  );
});

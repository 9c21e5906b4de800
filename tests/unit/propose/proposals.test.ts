import { describe, expect, test } from 'vitest';
import { analyse, findings, withClearances } from '../../../shared-math/findings/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { parseLayout, resolveLayout } from '../../../shared-math/layout/index.ts';
import {
  gatherProposals,
  heldAsMeasured,
  type ProposeNews,
  type ProposeQuestion,
  proposeTask,
  proposeTasks,
  type TaskResult,
  withSteeringForgotten,
} from '../../../shared-math/propose/index.ts';
import { formatLength } from '../../../shared-math/units/index.ts';
import { CARS_TO_STEER } from '../../support/cars-to-steer.ts';
import { demonstration } from '../../support/demonstration-files.ts';
import { INCHES } from '../../support/judged-car.ts';
import { reachesInto } from '../../support/reaches-into.ts';

const question: ProposeQuestion = {
  document: withSteeringForgotten(demonstration('hairpins-side-steer')),
  style: INCHES,
};

function run(asked: ProposeQuestion, task: number): { result: TaskResult; news: ProposeNews[] } {
  const search = proposeTask(asked, task);
  const news: ProposeNews[] = [];
  let step = search.next();
  while (!step.done) {
    news.push(step.value);
    step = search.next();
  }
  return { result: step.value, news };
}

/** mm from a point to a line, by the share of the way along it (Pythagoras). */
function fromLine(point: Point, on: Point, along: Point): number {
  const to = point.map((value, i) => value - (on[i] as number));
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);
  return Math.sqrt(dot(to, to) - dot(to, along) ** 2 / dot(along, along));
}

describe('the board proposes', () => {
  const first = run(question, 0);

  test('a proposal is a whole document that has no stop, judged anew from its text', () => {
    const { found } = first.result;
    expect(found.length).toBeGreaterThan(0);
    for (const { layout, figures } of found) {
      const read = parseLayout(JSON.stringify(layout));
      expect(read.ok).toBe(true);
      if (!read.ok) continue;
      const analysis = withClearances(analyse(resolveLayout(read.value)));
      expect(findings(analysis, INCHES).filter(({ severity }) => severity === 'stop')).toEqual([]);
      expect(reachesInto(layout)).toEqual([]);
      expect(figures.bumpSteer).toBeLessThan(0.5);
      // The car is as it was: what is held and what is not the steering's.
      const { steering: _s, shaft: _h, lateral: _l, origins: _o, name: _n, notes: _t, ...rest } = layout;
      expect(question.document).toMatchObject(rest);
    }
  });

  test('arms come in whole eighths of an inch, and the sentence says which', () => {
    for (const { layout, good } of first.result.found) {
      const { steering, axle } = layout;
      const { kingpinTop, kingpinBottom } = axle.left;
      const along = kingpinTop.map((value, i) => value - (kingpinBottom[i] as number)) as unknown as Point;
      const lengths = [
        fromLine(steering.box.pitmanBall, steering.box.sectorCentre, steering.box.sectorAxis),
        fromLine(steering.dragLinkBall, kingpinBottom, along),
      ].map((mm) => mm / (25.4 / 8));
      for (const eighths of lengths) expect(Math.abs(eighths - Math.round(eighths))).toBeLessThan(0.01);
      const [pitman, arm] = lengths.map((eighths) => formatLength((Math.round(eighths) * 25.4) / 8, INCHES));
      expect(good).toContain(`Pitman arm ${pitman}, steering arm ${arm} to the ball: usual lengths.`);
    }
  });

  test('it says what it is doing, and how far it has come', () => {
    expect(first.news.length).toBeGreaterThan(10);
    for (const { doing, share } of first.news) {
      expect(doing).toMatch(/^Side steer, box outside the left rail, arm down, behind the axle, manual: \w/);
      expect(share).toBeGreaterThanOrEqual(0);
      expect(share).toBeLessThanOrEqual(1);
    }
  });

  test('the same seed gives the same answer', () => {
    // As far as the first that is found: the rest goes on from there by the same numbers.
    const found = first.news.find((news) => news.found.length > 0);
    for (const news of proposeTask(question, 0))
      if (news.found.length > 0) {
        expect(news).toEqual(found);
        return;
      }
    throw new Error('nothing was found');
  });

  test('what was measured is held, what is forgotten of the steering is not', () => {
    expect(heldAsMeasured(demonstration('hairpins-side-steer'))).toEqual([
      'box',
      'box-kind',
      'pitman-arm',
      'steering-arm',
      'tie-rod',
    ]);
    expect(heldAsMeasured(question.document)).toEqual(['tie-rod']);
  });

  test('a box that only fits inside an engine is no proposal: the sentence says so', () => {
    const { document } = question;
    // As wide as the frame and wider, from rail to rail and beyond, as high as the box.
    const engine = {
      kind: 'box' as const,
      name: 'Engine',
      role: 'engine' as const,
      centre: [-700, 0, 500] as const,
      size: [1500, 1300, 300] as const,
      mirrored: false,
    };
    const asked: ProposeQuestion = {
      ...question,
      document: { ...document, obstacles: [engine] },
      held: ['tie-rod', 'stops'],
    };
    const { result } = run(asked, 0);
    expect(result.found).toEqual([]);
    expect(result.noFit?.sentences).toEqual([
      expect.stringMatching(/^The steering box reaches \d+( \d+\/\d+)? in into the engine\.$/),
    ]);
  });

  test('what fits at a usual place is the first that is looked at, and shown before anything is searched', () => {
    // A bar across would suggest cross steer behind the axle, for which this car's rails are too low.
    const document = CARS_TO_STEER.find(({ name }) => name === 'Low car')?.document;
    if (!document) throw new Error('no such car');
    const asked: ProposeQuestion = { document, style: INCHES };
    const [first] = proposeTasks(asked);
    for (const { found, evaluations, doing } of proposeTask(asked, first?.task ?? -1)) {
      if (found.length === 0) continue;
      expect(doing).toMatch(
        /^Side steer, box outside the left rail, arm down, behind the axle, manual: a first arrangement$/,
      );
      // Usual places, where the box goes, and its bump steer alone: 20 places, 14 generations of them, 12 for each number left open.
      expect(evaluations).toBeLessThan(20 * 15 + 12 * 12 + 100);
      return;
    }
    throw new Error('nothing was found');
  });

  test('ideas differ in words, and nothing found is no proposal', () => {
    const words = proposeTasks(question).map((task) => task.words);
    expect(new Set(words).size).toBe(words.length);
    expect(gatherProposals([])).toEqual({ proposals: [], noFits: [], evaluations: 0 });
  });
});

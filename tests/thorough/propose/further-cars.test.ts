import { describe, expect, test } from 'vitest';
import {
  gatherProposals,
  type ProposeAnswer,
  type ProposeQuestion,
  proposeTask,
  proposeTasks,
} from '../../../shared-math/propose/index.ts';
import { CARS_TO_STEER } from '../../support/cars-to-steer.ts';
import { stopsOf } from '../../support/judged-anew.ts';
import { INCHES } from '../../support/judged-car.ts';
import { reachesInto } from '../../support/reaches-into.ts';

// Cars that nobody has steered yet, searched and then judged from the proposed documents alone.

/** What the pieces of a search whose words match come to together. */
function answerOf(car: string, wanted: RegExp): ProposeAnswer {
  const document = CARS_TO_STEER.find(({ name }) => name === car)?.document;
  if (!document) throw new Error(`no car ${car}`);
  const question: ProposeQuestion = { document, style: INCHES };
  const tasks = proposeTasks(question).filter(({ words }) => wanted.test(words));
  return gatherProposals(
    tasks.map(({ task }) => {
      const search = proposeTask(question, task);
      let step = search.next();
      while (!step.done) step = search.next();
      return step.value;
    }),
  );
}

describe('a car without steering', () => {
  test.each([
    ['Tight engine', /^Side steer.* behind .*manual/, 2],
    ['Leaf springs', /^Cross steer.* behind/, 2],
  ])('%s gets proposals without a stop, in nothing', async (car, wanted, atLeast) => {
    const { proposals } = answerOf(car, wanted);
    expect(proposals.length).toBeGreaterThanOrEqual(atLeast);
    for (const { name, layout } of proposals)
      expect({ name, stops: await stopsOf(layout), in: reachesInto(layout) }).toEqual({
        name,
        stops: [],
        in: [],
      });
  });

  test('No room anywhere gets none, and each reason says what its box is in', () => {
    const { proposals, noFits } = answerOf('No room anywhere', /./);
    expect(proposals).toEqual([]);
    expect(noFits.length).toBeGreaterThanOrEqual(8);
    let seen = 0;
    for (const { idea, sentences, layout } of noFits) {
      const [said] = sentences;
      expect({ idea, said }).toEqual({
        idea,
        said: expect.stringMatching(/^The steering box reaches \S.* into the \w/),
      });
      // A body smaller than any box, laid in points: all that it is in has to be among what the sentence names.
      const found = layout
        ? reachesInto(layout).filter((into) => into.startsWith('steering box in the '))
        : [];
      seen += found.length;
      for (const into of found) expect(said).toContain(into.replace('steering box in', 'into'));
    }
    expect(seen).toBeGreaterThanOrEqual(noFits.length / 2);
    // No two ways of steering read alike.
    expect(new Set(noFits.map(({ sentences }) => sentences.join(' '))).size).toBe(noFits.length);
  });
});

import { describe, expect, test } from 'vitest';
import {
  gatherProposals,
  type ProposeAnswer,
  type ProposeQuestion,
  proposeTask,
  proposeTasks,
} from '../../../shared-math/propose/index.ts';
import { CARS_FOR_ONE_WAY, CARS_TO_STEER } from '../../support/cars-to-steer.ts';
import { stopsOf } from '../../support/judged-anew.ts';
import { INCHES } from '../../support/judged-car.ts';
import { reachesInto } from '../../support/reaches-into.ts';

// Cars that nobody has steered yet, searched and then judged from the proposed documents alone.

/** What the pieces of a search whose words match come to together. */
function answerOf(car: string, wanted: RegExp): ProposeAnswer {
  const document = [...CARS_TO_STEER, ...CARS_FOR_ONE_WAY].find(({ name }) => name === car)?.document;
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

/** What else may be said first: of a box that finds a gap beside ducts and tanks but no rail, or no link. */
const ELSE_IN_THE_WAY =
  /^(The steering box is \S.* (out of reach of its place|too low over the road)|Neither rail nor crossmember is in reach|Drag link hits the \w|Bump steer \d)/;

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

  test('No room anywhere gets none, and each reason says what its box is in, or what else is in the way', () => {
    const { proposals, noFits } = answerOf('No room anywhere', /./);
    expect(proposals).toEqual([]);
    expect(noFits.length).toBeGreaterThanOrEqual(8);
    let seen = 0;
    for (const { idea, sentences, layout } of noFits) {
      const [said] = sentences;
      if (!said?.startsWith('The steering box reaches')) {
        expect({ idea, said }).toEqual({ idea, said: expect.stringMatching(ELSE_IN_THE_WAY) });
        continue;
      }
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
    const reaching = noFits.filter(({ sentences }) => sentences[0]?.startsWith('The steering box reaches'));
    expect(reaching.length).toBeGreaterThanOrEqual(0.6 * noFits.length);
    expect(seen).toBeGreaterThanOrEqual(reaching.length / 2);
    // Each says its own: hardly any two ways of steering read alike.
    const said = new Set(reaching.map(({ sentences }) => sentences.join(' ')));
    expect(said.size).toBeGreaterThanOrEqual(0.9 * reaching.length);
  });

  // Tanks stand beside the rails and engine, sump and nose tank between them; the arm hangs between rail and tank.
  test('Room on top of the rail alone gets its box there, its arm hanging outside', async () => {
    const { proposals } = answerOf('Room on top of the rail alone', / manual$/);
    expect(proposals.length).toBeGreaterThan(0);
    for (const { name, layout } of proposals) {
      expect(name).toMatch(/^Side steer on top of the left rail, arm down, behind the axle, manual /);
      expect({ name, stops: await stopsOf(layout), in: reachesInto(layout) }).toEqual({
        name,
        stops: [],
        in: [],
      });
      // By the car's own drawing: behind x = -660 the rails' middle line goes from 345 to 435 mm out, 50 mm wide, 485 mm high;
      // a hand ahead of that they are hardly elsewhere.
      const { sectorCentre, pitmanBall } = layout.steering.box;
      const [x, y, z] = sectorCentre;
      expect(x).toBeLessThan(-640);
      const middle = 345 + Math.max(0, (-660 - x) / 1640) * 90;
      expect(Math.abs(y - middle)).toBeLessThan(25);
      // A box is no less than 38 mm around its sector shaft.
      expect(z).toBeGreaterThan(485 + 38);
      expect(pitmanBall[1]).toBeGreaterThan(middle + 25);
      expect(pitmanBall[2]).toBeLessThan(z);
    }
  });

  // Behind the axle the rails lie below the link, and the body over them.
  test('Low rails under a channelled body get a box beside them with its arm standing up', async () => {
    const { proposals } = answerOf('Low rails under a channelled body', / manual$/);
    expect(proposals.length).toBeGreaterThan(0);
    for (const { name, layout } of proposals) {
      expect(name).toMatch(/^Side steer .*left rail.*, arm up, behind the axle, manual /);
      expect({ name, stops: await stopsOf(layout), in: reachesInto(layout) }).toEqual({
        name,
        stops: [],
        in: [],
      });
      const { sectorCentre, pitmanBall } = layout.steering.box;
      expect(pitmanBall[2] - sectorCentre[2]).toBeGreaterThan(100);
      // The frame goes down by all of its 76 mm of bump: a box 44 mm around its sector shaft still clears the road.
      expect(sectorCentre[2] - 44 - layout.travel.bump).toBeGreaterThan(50);
    }
  });
});

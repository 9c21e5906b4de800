import { expect, test } from 'vitest';
import { carOf } from '../../shared-math/propose/car.ts';
import { ideasFor } from '../../shared-math/propose/ideas.ts';
import {
  type ProposeQuestion,
  proposeTask,
  proposeTasks,
  withSteeringForgotten,
} from '../../shared-math/propose/index.ts';
import { firstFrontEnd, IdeaSearch, searchIdea } from '../../shared-math/propose/search-idea.ts';
import { seededRandom } from '../../shared-math/solve/random.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { ALL_TO_STEER } from '../support/cars-to-steer.ts';
import { demonstration } from '../support/demonstration-files.ts';
import { INCHES } from '../support/judged-car.ts';

const TIMES = 10;
/** rad: to a thousandth of a degree two bump steers are one. */
const SAME = (0.001 * Math.PI) / 180;

const cpuMilliseconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/**
 * The search beside its peer, places drawn evenly in the same bounds and held to the same limits: how low a bump steer each
 * finds, the peer with ten times the evaluations. Times are the processor's, as the machine may be shared.
 */
test.each([
  ['hairpins-side-steer', 'side outside behind manual'],
  ['parallel-leaf-cross-steer', 'cross inside behind power'],
  ['wishbone-side-steer', 'side outside behind manual'],
])('proposals for %s beside a plain random search', (name, key) => {
  const question: ProposeQuestion = { document: withSteeringForgotten(demonstration(name)), style: INCHES };
  const car = carOf(question);
  const ideas = ideasFor(car);
  const task = ideas.findIndex((idea) => idea.key === key);
  const idea = ideas[task];
  if (!idea) throw new Error(`no idea ${key}`);

  const search = searchIdea(car, idea, task);
  const began = cpuMilliseconds();
  let first: number | undefined;
  let evaluations = 0;
  let least = Number.POSITIVE_INFINITY;
  let step = search.next();
  while (!step.done) {
    const { found, doing } = step.value;
    if (found.length > 0) first ??= cpuMilliseconds() - began;
    if (doing.endsWith('within all limits')) evaluations = step.value.evaluations;
    for (const { figures } of found)
      least = Math.min(least, Math.max(figures.bumpSteer, figures.oneWheel ?? Number.POSITIVE_INFINITY));
    step = search.next();
  }
  const whole = cpuMilliseconds() - began;

  const start = firstFrontEnd(idea);
  if (!start) throw new Error('unreachable');
  const peer = new IdeaSearch(car, idea, start);
  const random = seededRandom(1);
  const peerBegan = cpuMilliseconds();
  let peerLeast = Number.POSITIVE_INFINITY;
  for (let i = 0; i < TIMES * evaluations; i += 1) {
    const x = idea.choices.map(({ from, to }) => from + random() * (to - from));
    const bump = peer.bump(x);
    if (bump < peerLeast && peer.missing(x, Number.MIN_VALUE, 1) === 0) peerLeast = bump;
  }
  const peerWhole = cpuMilliseconds() - peerBegan;
  process.stdout.write(
    `${name}, ${key}: ${least.toFixed(3)}° in ${evaluations} evaluations; drawn by lot ${toDegrees(peerLeast).toFixed(3)}° in ${TIMES * evaluations}. ` +
      `First proposal after ${(first ?? Number.NaN).toFixed(0)} ms, ${((1000 * step.value.evaluations) / whole).toFixed(0)} evaluations a second with routes and verdicts; by lot ${((1000 * TIMES * evaluations) / peerWhole).toFixed(0)} a second\n`,
  );
  expect(least).toBeLessThanOrEqual(toDegrees(peerLeast + SAME));
});

/** ms of processor that places drawn by lot may take to come upon one within all limits. */
const PATIENCE = 20_000;

/** ms of processor until a place within all limits is drawn by lot in all ideas in turn, no shaft led there; undefined if none is. */
function firstByLot(question: ProposeQuestion): number | undefined {
  const began = cpuMilliseconds();
  const car = carOf(question);
  const random = seededRandom(1);
  const searches = ideasFor(car).flatMap((idea) => {
    const start = firstFrontEnd(idea);
    return start ? [{ idea, search: new IdeaSearch(car, idea, start) }] : [];
  });
  while (cpuMilliseconds() - began < PATIENCE)
    for (const { idea, search } of searches) {
      const x = idea.choices.map(({ from, to }) => from + random() * (to - from));
      if (search.missing(x, Number.MIN_VALUE, 1) === 0) return cpuMilliseconds() - began;
    }
  return undefined;
}

/** The whole search by one worker, from the question on, until something that fits is shown with its shaft and its verdict. */
test.each(['wishbone-side-steer', 'Low car', 'Tall tyre', 'hairpins-side-steer', 'four-bar-cross-steer'])(
  'first proposal for %s',
  (name) => {
    const document = ALL_TO_STEER.find((car) => car.name === name)?.document;
    if (!document) throw new Error(`no car ${name}`);
    const question: ProposeQuestion = { document, style: INCHES };
    const began = cpuMilliseconds();
    let first: number | undefined;
    let looked = 0;
    for (const { task } of proposeTasks(question)) {
      looked += 1;
      for (const { found } of proposeTask(question, task))
        if (found.length > 0) {
          first = cpuMilliseconds() - began;
          break;
        }
      if (first !== undefined) break;
    }
    const peer = firstByLot(question);
    process.stdout.write(
      `${name}: first proposal after ${first?.toFixed(0) ?? 'none'} ms of processor, in the ${looked === 1 ? 'first idea' : `first ${looked} ideas`}; ` +
        `by lot within all limits, no shaft led there, ${peer === undefined ? `none in ${PATIENCE} ms` : `after ${peer.toFixed(0)} ms`}\n`,
    );
    expect(first).toBeDefined();
  },
);

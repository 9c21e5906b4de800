import { describe, expect, test } from 'vitest';
import { analyse, findings, withClearances } from '../../../shared-math/findings/index.ts';
import { type LayoutDocument, readLayout, resolveLayout } from '../../../shared-math/layout/index.ts';
import { type ProposeQuestion, propose } from '../../../shared-math/propose/index.ts';
import { relaxationsOf } from '../../../shared-math/propose/relaxations.ts';
import { demonstration } from '../../support/demonstration-files.ts';
import { INCHES } from '../../support/judged-car.ts';

/** A demonstration that is good as it is, all of its steering held, with a tank put where its drag link runs. */
function withTank(at: number): LayoutDocument {
  const document = demonstration('hairpins-side-steer');
  const read = readLayout({
    ...document,
    obstacles: [
      ...document.obstacles,
      {
        kind: 'box',
        name: 'Tank',
        role: 'other',
        centre: [-400, 455, at],
        size: [120, 40, 80],
        mirrored: false,
      },
    ],
  });
  if (!read.ok) throw new Error(read.failure.reason);
  return read.value;
}

function answerOf(question: ProposeQuestion) {
  const search = propose(question);
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value;
}

const held = ['box', 'box-kind', 'pitman-arm', 'steering-arm', 'tie-rod', 'lateral', 'shaft'] as const;

describe('where nothing fits', () => {
  const { proposals, why } = answerOf({ document: withTank(370), style: INCHES, held });

  test('the obstacle that was put in is named, with how far it has to go, and what fits then has no stop', () => {
    expect(proposals).toEqual([]);
    expect(why?.single).toBe(true);
    expect(why?.excluding).toContain('the tank where it is');
    for (const other of ['engine', 'sump', 'radiator', 'header tube'])
      expect(why?.excluding).not.toContain(`the ${other} where it is`);
    const way = why?.ways.find(({ words }) => words.startsWith('the tank'));
    expect(way?.words).toMatch(/^the tank (1 1\/2|[2-6]) in higher$/);
    expect(why?.sentence).toContain(way?.words ?? 'no way');
    if (!way) return;
    const stops = findings(withClearances(analyse(resolveLayout(way.layout))), INCHES).filter(
      ({ severity }) => severity === 'stop',
    );
    expect(stops).toEqual([]);
  });

  test('the engine goes with what is bolted to it, what stands aside goes outward, a radiator ahead alone', () => {
    const document = demonstration('hairpins-side-steer');
    const all = relaxationsOf({ document, style: INCHES });
    const ways = (key: string) =>
      all
        .find((each) => each.key === key)
        ?.ladders.map(([first]) => /[a-z ]+$/.exec(first?.words ?? '')?.[0]);
    expect(ways('obstacle radiator')).toEqual([' in further ahead']);
    expect(ways('obstacle header tube')).toContain(' in further out');
    expect(ways('obstacle sump')).not.toContain(' in further out');
    const engine = all.find((each) => each.key === 'obstacle engine');
    const lifted = engine?.ladders[0]?.at(-1)?.question.document.obstacles ?? [];
    const height = (obstacle: (typeof lifted)[number]) =>
      obstacle.kind === 'box' ? obstacle.centre[2] : obstacle.from[2];
    for (const [i, obstacle] of document.obstacles.entries()) {
      const onEngine = ['engine', 'sump', 'header'].includes(obstacle.role);
      // The last step is 6 in.
      expect(height(lifted[i] as typeof obstacle) - height(obstacle)).toBeCloseTo(onEngine ? 152.4 : 0, 9);
    }
  });

  test('the nearest arrangement is given with what it breaks', () => {
    expect(why?.nearest?.sentences.join(' ')).toMatch(/Drag link hits the tank/);
    expect(why?.nearest?.layout).toBeDefined();
  });

  test('with the tank out of the drag link’s reach the held steering is proposed as it stands', () => {
    const document = withTank(900);
    const [first] = answerOf({ document, style: INCHES, held }).proposals;
    expect(first?.layout.steering.box).toEqual(document.steering.box);
    expect(first?.layout.steering.dragLinkBall).toEqual(document.steering.dragLinkBall);
    expect(first?.layout.shaft).toEqual(document.shaft);
    expect(first?.layout.lateral).toEqual(document.lateral);
  });
});

test('a drawn steering that steers over bumps is let go before a limit of the shop is let pass', () => {
  const { proposals, why } = answerOf({ document: demonstration('hairpins-box-too-low'), style: INCHES });
  expect(proposals).toEqual([]);
  const [way] = why?.ways ?? [];
  // The same car with its box and pitman ball elsewhere is the demonstration that is good as it is.
  expect(way?.words).toBe('the steering box and its pitman ball elsewhere');
  expect(why?.sentence).not.toMatch(/at most|at least/);
  if (!way) return;
  const stops = findings(withClearances(analyse(resolveLayout(way.layout))), INCHES).filter(
    ({ severity }) => severity === 'stop',
  );
  expect(stops).toEqual([]);
});

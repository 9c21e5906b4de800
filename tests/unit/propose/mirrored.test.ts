import { describe, expect, test } from 'vitest';
import { type LayoutDocument, readLayout } from '../../../shared-math/layout/index.ts';
import {
  type Proposal,
  type ProposeQuestion,
  proposeTask,
  proposeTasks,
  withSteeringForgotten,
} from '../../../shared-math/propose/index.ts';
import { expectClose } from '../../support/close.ts';
import { demonstration } from '../../support/demonstration-files.ts';
import { INCHES } from '../../support/judged-car.ts';

// A mirrored car gets mirrored proposals. The mirror is written anew here: y negated in every place and direction, the
// left and the right named the other way round.

const NO_PLACES = new Set(['size', 'origins', 'ride', 'car']);

function mirrorOf<Value>(value: Value, key = ''): Value {
  if (NO_PLACES.has(key)) return value;
  if (Array.isArray(value)) {
    const isPlace = value.length === 3 && value.every((entry) => typeof entry === 'number');
    if (isPlace) return [value[0], 0 - value[1], value[2]] as Value;
    return value.map((entry) => mirrorOf(entry)) as Value;
  }
  if (key === 'dragLinkTo') return (value === 'left' ? 'right' : 'left') as Value;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, entry]) => [name, mirrorOf(entry, name)]),
  ) as Value;
}

/** Axle and its location are alike on both sides and stay. */
function mirroredCar(document: LayoutDocument): LayoutDocument {
  const { steering, lateral, shaft, rails, obstacles } = document;
  const read = readLayout({
    ...document,
    ...mirrorOf({ steering, lateral, shaft, rails, obstacles }),
  });
  if (!read.ok) throw new Error(read.failure.reason);
  return read.value;
}

/** What a piece of the search finds first; the rest of it goes the same way. */
function firstFound(question: ProposeQuestion, task: number): readonly Proposal[] {
  for (const { found } of proposeTask(question, task)) if (found.length > 0) return found;
  return [];
}

describe('mirrored cars', () => {
  test.each([
    ['outside the rail', /^Side steer, box outside .*, arm down/],
    ['on top of it', /^Side steer, box on top of .*, arm down/],
  ])('get mirrored proposals, and the words for the other side: %s', (_where, wanted) => {
    const document = withSteeringForgotten(demonstration('wishbone-side-steer'));
    const question: ProposeQuestion = { document, style: INCHES };
    const other: ProposeQuestion = { document: mirroredCar(document), style: INCHES };
    expect(proposeTasks(other).map(({ words }) => words.replaceAll('right rail', 'left rail'))).toEqual(
      proposeTasks(question).map(({ words }) => words),
    );
    const { task = 0 } = proposeTasks(question).find(({ words }) => wanted.test(words)) ?? {};
    const [one, two] = [firstFound(question, task), firstFound(other, task)];
    expect(one.length).toBeGreaterThan(0);
    expect(two.map(({ key }) => key)).toEqual(one.map(({ key }) => key));
    for (const [i, { layout, figures, name }] of two.entries()) {
      const twin = one[i];
      if (!twin) throw new Error('unreachable');
      expect(mirrorOf(layout.steering)).toEqual(twin.layout.steering);
      expect(mirrorOf(layout.lateral)).toEqual(twin.layout.lateral);
      expect(mirrorOf(layout.shaft?.joints)).toEqual(twin.layout.shaft?.joints);
      expectClose(figures.bumpSteer, twin.figures.bumpSteer, 1e-9);
      expectClose(figures.rimForceMost, twin.figures.rimForceMost, 1e-6);
      expect(name.replace('right rail', 'left rail')).toBe(twin.name);
    }
  });
});

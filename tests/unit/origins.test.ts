import { describe, expect, test } from 'vitest';
import { proposeArrangements } from '../../shared-math/arrange/index.ts';
import {
  hardpoints,
  type LayoutDocument,
  moveHardpoint,
  type Origin,
  originOf,
  readLayout,
  refusalLine,
  withOriginsKept,
  withValue,
} from '../../shared-math/layout/index.ts';
import { freedomNamed, tune } from '../../shared-math/tune/index.ts';
import { withLateralKind, withLocationKind, withMirror } from '../../src-renderer/document/conversions.ts';
import { withJointIn, withoutJoint } from '../../src-renderer/places/shaft/shaft-edits.ts';
import { documentOf, LATERALS, rawLayout } from '../support/layouts.ts';
import { rawShaft } from '../support/shafts.ts';

const PIVOT = 'location.left.framePivot';
const PIVOT_RIGHT = 'location.right.framePivot';

function laid(origins: Record<string, Origin>, over: Record<string, unknown> = {}): LayoutDocument {
  return documentOf(rawLayout({ lateral: LATERALS.bar, ...over, origins }));
}

/** An edit as the board takes it. */
function edited(before: LayoutDocument, after: LayoutDocument): LayoutDocument {
  const read = readLayout(withOriginsKept(before, after));
  if (!read.ok) throw new Error(refusalLine(read.failure));
  return read.value;
}

function originAt(document: LayoutDocument, id: string): Origin {
  const point = hardpoints(document).find((entry) => entry.id === id);
  if (!point) throw new Error(id);
  return originOf(document, point);
}

describe('where points come from', () => {
  test.each([
    [
      'a point that the layout does not have',
      { 'location.framePivot': 'tape' },
      'origins.location.framePivot: this layout has no such point',
    ],
    [
      'a word that is none of the four',
      { [PIVOT]: 'hearsay' },
      `origins.${PIVOT}: expected "guess" or "plan" or "tape" or "photo", found the text "hearsay"`,
    ],
    [
      'both points of a mirrored pair',
      { [PIVOT_RIGHT]: 'tape', [PIVOT]: 'tape' },
      `origins.${PIVOT}: ${PIVOT_RIGHT} has one already, and the two are mirrored: only one of them may have it`,
    ],
  ])('%s is refused by its name', (_, origins, line) => {
    const read = readLayout(rawLayout({ origins }));
    expect(read.ok ? 'accepted' : refusalLine(read.failure)).toBe(line);
  });

  test('is one for a mirrored pair, under either id; without an entry it is a guess', () => {
    for (const id of [PIVOT, PIVOT_RIGHT]) {
      const document = laid({ [id]: 'tape' });
      expect([PIVOT, PIVOT_RIGHT, 'lateral.axle'].map((point) => originAt(document, point))).toEqual([
        'tape',
        'tape',
        'guess',
      ]);
    }
  });

  test('stays through moves, and other edits, as the same document part', () => {
    const before = laid({ [PIVOT_RIGHT]: 'tape', 'lateral.axle': 'photo' });
    for (const after of [
      moveHardpoint(before, 'steering.box.sectorCentre', [-700, 480, 490]),
      withValue(before, 'car.wheelbase', 2500),
      moveHardpoint(before, PIVOT, [-880, 415, 335]),
    ])
      expect(withOriginsKept(before, after)).toBe(after);
  });

  test('goes with a point that an edit takes away, and no other', () => {
    const before = laid({ [PIVOT]: 'tape', 'lateral.axle': 'photo', 'steering.dragLinkBall': 'plan' });
    expect(edited(before, withLocationKind(before, 'four-bar')).origins).toEqual({
      'lateral.axle': 'photo',
      'steering.dragLinkBall': 'plan',
    });
    expect(edited(before, withLateralKind(before, 'spring')).origins).toEqual({
      [PIVOT]: 'tape',
      'steering.dragLinkBall': 'plan',
    });
  });

  test('a pair that is spelled out has it on both sides; one that is mirrored keeps the left one’s', () => {
    for (const id of [PIVOT, PIVOT_RIGHT]) {
      const pair = laid({ [id]: 'tape' });
      const apart = edited(pair, withMirror(pair, 'location', false));
      expect(apart.origins).toEqual({ [PIVOT]: 'tape', [PIVOT_RIGHT]: 'tape' });
      const differing = { ...apart, origins: { [PIVOT]: 'plan', [PIVOT_RIGHT]: 'photo' } as const };
      expect(edited(differing, withMirror(differing, 'location', true)).origins).toEqual({ [PIVOT]: 'plan' });
      const rightOnly = { ...apart, origins: { [PIVOT_RIGHT]: 'photo' } as const };
      expect(edited(rightOnly, withMirror(rightOnly, 'location', true)).origins).toEqual({});
    }
  });

  test('a joint’s goes along with the joint when one is put in before it, or taken out', () => {
    const before = laid({ 'shaft.joints.1.centre': 'tape', 'shaft.box.end': 'photo' }, { shaft: rawShaft() });
    const shaft = before.shaft as NonNullable<LayoutDocument['shaft']>;
    const more = edited(before, { ...before, shaft: withJointIn(shaft, 0) });
    expect(more.origins).toEqual({ 'shaft.joints.2.centre': 'tape', 'shaft.box.end': 'photo' });
    const fewer = { ...more, shaft: withoutJoint(more.shaft as typeof shaft, 1) ?? null };
    expect(edited(more, fewer).origins).toEqual(before.origins);
    expect(edited(before, { ...before, shaft: null }).origins).toEqual({});
  });

  test('is in what a tune proposes, and in the four arrangements', () => {
    const origins = { [PIVOT]: 'tape', 'axle.left.wheelCentre': 'photo' } as const;
    const document = laid(origins);
    const freedom = freedomNamed('link-end-up');
    if (!freedom) throw new Error('no such freedom');
    const search = tune(document, [{ freedom, from: -20, to: 20 }], { seed: 1 });
    let step = search.next();
    while (!step.done) step = search.next();
    expect(step.value.ok && step.value.value.document.origins).toEqual(origins);
    const facts = { frameWidth: 800, engineFillsFrame: false, driven: 'town' } as const;
    for (const { document: proposed } of proposeArrangements(document, facts))
      expect(proposed.origins).toEqual(origins);
  });
});

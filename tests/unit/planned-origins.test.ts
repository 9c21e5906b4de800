import { describe, expect, test } from 'vitest';
import {
  moveHardpoint,
  originCounts,
  withGuessesPlanned,
  withMovedPlanned,
} from '../../shared-math/layout/index.ts';
import { Edits } from '../../src-renderer/document/edits.ts';
import { documentOf, rawLayout } from '../support/layouts.ts';

const document = documentOf(rawLayout({ origins: { 'location.left.framePivot': 'tape' } }));

describe('where points come from after an edit', () => {
  test('what was moved by hand is planned, with what is bolted to it; the rest keeps its origin', () => {
    const moved = moveHardpoint(document, 'steering.box.sectorCentre', [-810, 500, 480]);
    expect(withMovedPlanned(document, moved).origins).toEqual({
      'location.left.framePivot': 'tape',
      'steering.box.sectorCentre': 'plan',
      'steering.box.pitmanBall': 'plan',
    });
  });
  test('a mirrored point keeps one origin, whichever side was moved', () => {
    const moved = moveHardpoint(document, 'location.right.framePivot', [-900, -420, 340]);
    expect(withMovedPlanned(document, moved).origins).toEqual({ 'location.left.framePivot': 'plan' });
  });
  test('an edit that moves nothing changes nothing', () => {
    const renamed = { ...document, name: 'Other' };
    expect(withMovedPlanned(document, renamed)).toBe(renamed);
  });
  test('an edit that says where its points come from is left as it is', () => {
    const moved = {
      ...moveHardpoint(document, 'steering.dragLinkBall', [0, 480, 390]),
      origins: { 'steering.dragLinkBall': 'photo' as const },
    };
    expect(withMovedPlanned(document, moved).origins).toEqual({ 'steering.dragLinkBall': 'photo' });
  });
});

test('counts take mirrored pairs once; guesses taken as planned leave none', () => {
  expect(originCounts(document)).toEqual({ measured: 1, planned: 0, guessed: 7, all: 8 });
  const planned = withGuessesPlanned(document);
  expect(originCounts(planned)).toEqual({ measured: 1, planned: 7, guessed: 0, all: 8 });
  expect(documentOf(planned).origins).toEqual(planned.origins);
});

test('a drag leaves its point planned, whatever came on the way, and one that is given back as it was', () => {
  const board = {
    document: document as ReturnType<typeof documentOf> | null,
    history: { done: [], undone: [] },
    points: [],
    saving: { put() {}, hasSent: () => false, withdraw() {} },
    carPose: { returnForEdit() {} },
    forgetLostPoints() {},
    tell() {},
  };
  const edits = new Edits(board);
  const drag = edits.beginDrag('Move');
  for (const x of [-5, -10, -15])
    expect(drag.move(moveHardpoint(document, 'steering.dragLinkBall', [x, 484, 395]))).toBe(true);
  drag.commit();
  expect(board.document?.origins).toEqual({
    'location.left.framePivot': 'tape',
    'steering.dragLinkBall': 'plan',
  });
  edits.undo();
  expect(board.document).toBe(document);
});

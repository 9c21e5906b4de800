import { beforeEach, describe, expect, test } from 'vitest';
import { hardpoints, type LayoutDocument, moveHardpoint } from '../../../shared-math/layout/index.ts';
import { type EditedBoard, Edits } from '../../../src-renderer/document/edits.ts';
import { EMPTY_HISTORY } from '../../../src-renderer/document/history.ts';
import type { SaveJob } from '../../../src-renderer/document/save-queue.ts';
import { impossibleLayout, sampleLayout } from '../../support/host-sample.ts';

/** A board without a screen, which writes down what the edits ask of it. */
class PlainBoard implements EditedBoard {
  document: LayoutDocument | null = sampleLayout('Arm down', 300);
  history: EditedBoard['history'] = EMPTY_HISTORY;
  told = '';
  returned = 0;
  readonly put: (SaveJob & { delay: number | undefined })[] = [];
  readonly withdrawn: string[] = [];
  sent = false;
  readonly saving = {
    put: (job: SaveJob, delay?: number) => void this.put.push({ ...job, delay }),
    hasSent: () => this.sent,
    withdraw: (step: string) => void this.withdrawn.push(step),
  };
  get points() {
    return this.document ? hardpoints(this.document) : [];
  }
  readonly carPose = {
    returnForEdit: () => {
      this.returned += 1;
    },
  };
  forgetLostPoints() {}
  tell(sentence: string) {
    this.told = sentence;
  }
  get height() {
    return this.document?.steering.box.pitmanBall[2];
  }
}

let board: PlainBoard;
let edits: Edits;

const raised = (height: number): LayoutDocument =>
  moveHardpoint(board.document ?? sampleLayout(), 'steering.box.pitmanBall', [-872, 500, height]);
const labels = () => board.history.done.map(({ label }) => label);

beforeEach(() => {
  board = new PlainBoard();
  edits = new Edits(board);
});

describe('a drag', () => {
  test('is one step of undo and one place in the stored history, and is saved at once at its end', () => {
    const drag = edits.beginDrag('Move pitman ball');
    for (const height of [310, 320, 330]) expect(drag.move(raised(height))).toBe(true);
    expect(labels()).toEqual([]);
    drag.commit();
    expect(labels()).toEqual(['Move pitman ball']);
    expect(new Set(board.put.map(({ step }) => step)).size).toBe(1);
    expect(board.put.at(-1)).toMatchObject({ delay: 0, label: 'Move pitman ball' });
    edits.undo();
    expect(board.height).toBe(300);
    edits.redo();
    expect(board.height).toBe(330);
  });

  test('begins at ride height', () => {
    edits.beginDrag('Move pitman ball');
    expect(board.returned).toBe(1);
  });

  test('that is cancelled was never there', () => {
    const drag = edits.beginDrag('Move pitman ball');
    drag.move(raised(320));
    drag.cancel();
    expect([board.height, labels(), board.withdrawn.length]).toEqual([300, [], 1]);
  });

  test('that is cancelled after it was saved is saved over in its own place', () => {
    const drag = edits.beginDrag('Move pitman ball');
    drag.move(raised(320));
    board.sent = true;
    drag.cancel();
    const last = board.put.at(-1);
    expect(last?.document.steering.box.pitmanBall[2]).toBe(300);
    expect(last?.step).toBe(board.put[0]?.step);
  });

  test('over an impossible spot stays where it last was possible, and says why', () => {
    const drag = edits.beginDrag('Move steering arm ball');
    drag.move(raised(320));
    const { pitmanBall } = raised(320).steering.box;
    expect(drag.move(moveHardpoint(raised(320), 'steering.dragLinkBall', pitmanBall))).toBe(false);
    expect(board.height).toBe(320);
    expect(board.told).toContain('Steering arm ball: on the same spot as the pitman ball');
    drag.commit();
    expect(board.told).toBe('');
  });

  test('that moved nothing leaves nothing', () => {
    edits.beginDrag('Move pitman ball').commit();
    expect([labels(), board.put]).toEqual([[], []]);
  });

  test('ends when something else is edited, and has no say after that', () => {
    const drag = edits.beginDrag('Move pitman ball');
    drag.move(raised(320));
    edits.undo();
    expect(board.height).toBe(300);
    expect(drag.move(raised(340))).toBe(false);
    drag.commit();
    drag.cancel();
    expect(board.height).toBe(300);
    edits.redo();
    expect(board.height).toBe(320);
  });

  test('has no say over another document that was put on the board', () => {
    const drag = edits.beginDrag('Move pitman ball');
    board.document = sampleLayout('Another', 345);
    edits.forget();
    drag.cancel();
    expect(board.height).toBe(345);
  });
});

describe('a change', () => {
  test('that the layout cannot have is not taken, said in one line, and loses nothing', () => {
    expect(edits.change('Break it', impossibleLayout())).toBe(false);
    expect(edits.refusal).toContain('on the same spot as the pitman ball');
    expect(board.told).toBe(`Not changed. ${edits.refusal}.`);
    expect([board.height, labels(), board.put]).toEqual([300, [], []]);
  });

  test('with the same key right after another shares its step and its place', () => {
    edits.change('Nudge', raised(301), 'nudge');
    edits.change('Nudge', raised(302), 'nudge');
    edits.change('Nudge', raised(303), 'other');
    expect(labels()).toHaveLength(2);
    expect(new Set(board.put.map(({ step }) => step)).size).toBe(2);
    edits.undo();
    edits.undo();
    expect(board.height).toBe(300);
  });

  test('undone and redone is saved each time, as steps of their own', () => {
    edits.change('Raise', raised(310));
    edits.undo();
    edits.redo();
    expect(board.put.map(({ label }) => label)).toEqual(['Raise', 'Undo: Raise', 'Redo: Raise']);
    expect(new Set(board.put.map(({ step }) => step)).size).toBe(3);
  });

  test('with nothing open does nothing', () => {
    board.document = null;
    expect(edits.change('Raise', sampleLayout())).toBe(false);
    const drag = edits.beginDrag('Move');
    expect(drag.move(sampleLayout())).toBe(false);
    drag.commit();
    expect(board.put).toEqual([]);
  });
});

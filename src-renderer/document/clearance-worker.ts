import { type Clearances, leastClearances, REPORTED_WITHIN } from '../../shared-math/clearance/index.ts';
import { type LayoutDocument, resolveLayout } from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../shared-math/sweep/index.ts';

// Clearances take tens of milliseconds: they are worked out beside the page, one layout at a time.

export interface ClearanceQuestion {
  readonly number: number;
  readonly document: LayoutDocument;
}

export interface ClearanceAnswer {
  readonly number: number;
  /** Undefined if the layout cannot be steered at ride height. */
  readonly clearances: Clearances | null;
}

function measured(document: LayoutDocument): Clearances | null {
  const frontEnd = prepareFrontEnd(resolveLayout(document));
  const turn = sweepTurn(frontEnd, 0, 0);
  if (turn.status !== 'ok' || turn.count < 2) return null;
  const locks = { right: turn.right.handwheel, left: turn.left.handwheel };
  return leastClearances(frontEnd, locks, { within: REPORTED_WITHIN });
}

addEventListener('message', ({ data }: MessageEvent<ClearanceQuestion>) => {
  const answer: ClearanceAnswer = { number: data.number, clearances: measured(data.document) };
  postMessage(answer);
});

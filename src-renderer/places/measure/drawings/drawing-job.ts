import { type DrawingOutcome, readDrawing } from '../../../../shared-math/underlay/index.ts';

/** Reads the text of a drawing, beside the page: a large one takes a second. */
// biome-ignore lint/correctness/useYield: it is one step.
export function* drawingJob(text: string): Generator<undefined, DrawingOutcome> {
  return readDrawing(text);
}

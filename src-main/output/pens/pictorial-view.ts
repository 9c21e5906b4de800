import { type Box, boxOf, type Drawing } from '../../../shared-math/drawing/index.ts';
import { Pictorial, type Turn } from '../../../shared-math/pictorial/index.ts';
import { paintMarks } from './paint-marks.ts';
import type { Area, PageSize } from './papers.ts';
import { frontWord, type Mark, marksOf } from './pictorial-marks.ts';
import type { PrintPen } from './print-pen.ts';
import { LABEL } from './styles.ts';

/** mm of paper that a round outline may be off. */
const OFF = 0.02;

/** mm across at which lines have their own width; a smaller picture has finer ones, so that it does not clog. */
const FULL_INK = 100;
const LEAST_INK = 0.55;

/** What the widths of lines are multiplied by in a picture of so many mm across. */
export const inkFor = (width: number) => Math.min(1, Math.max(LEAST_INK, width / FULL_INK));

/** A car in space, as it will stand on paper. */
export interface FittedPictorial {
  readonly pictorial: Pictorial;
  readonly marks: readonly Mark[];
  /** What it covers, mm at full size. */
  readonly box: Box;
  /** The car is divided by this. */
  readonly scale: number;
}

/** A placed drawing as seen from `turn`, as large as a room of paper takes it, mm. */
export function fittedPictorial(
  drawing: Drawing,
  placed: Float64Array,
  turn: Turn,
  room: PageSize,
): FittedPictorial {
  const pictorial = new Pictorial(drawing);
  // Once to see how large it is, and once as finely as that asks.
  const box = boxOf(marksOf(pictorial.draw(placed, turn), drawing).flatMap(({ points }) => points));
  const scale = Math.max((box.right - box.left) / room.width, (box.bottom - box.top) / room.height);
  return { pictorial, box, scale, marks: marksOf(pictorial.draw(placed, turn, [], OFF * scale), drawing) };
}

/** How high it is on paper, mm. */
export const heightOf = ({ box, scale }: FittedPictorial) => (box.bottom - box.top) / scale;

/** Draws it in the middle of an area, at its upper edge, with the word at its front. */
export function paintPictorial(pen: PrintPen, fitted: FittedPictorial, area: Area): void {
  const { pictorial, marks, box, scale } = fitted;
  const x = area.x + (area.width - (box.right - box.left) / scale) / 2 - box.left / scale;
  const y = area.y - box.top / scale;
  const ink = inkFor((box.right - box.left) / scale);
  pen.named('pictorial', () => paintMarks(pen, marks, { x, y, scale, ink }));
  const { right, down, align } = frontWord(pictorial);
  pen.text('FRONT', x + right / scale, y + down / scale, LABEL, align);
}

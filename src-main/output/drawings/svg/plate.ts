import { formatDegrees, formatLength, toDegrees } from '../../../../shared-math/units/index.ts';
import { CAUTION } from '../../../../shared-math/words/index.ts';
import { warningSign } from '../../flow/page-frame.ts';
import type { Area, PageSize } from '../../pens/papers.ts';
import { lineHeight } from '../../pens/print-pen.ts';
import { scaleWords } from '../../pens/scales.ts';
import { BODY_SOFT, BORDER, CELL, SMALL, TITLE, WARNING } from '../../pens/styles.ts';
import type { SvgPen } from '../../pens/svg-pen.ts';
import { brokenInto, shortened, writeLines } from '../../pens/text-lines.ts';
import { DRAWN_WORDS, type DrawingJob, isCurves } from '../job.ts';
import { poseWords } from '../pose-words.ts';

// A plate: one drawing on a sheet of its own size, with what it shows, its scale and the cautions.

const EDGE = 5;
const PAD = 5;
const HEAD = 12;

/** mm of the plate around the room for its drawing, as the cautions need it at a width. */
function footHeight(pen: SvgPen, width: number): number {
  return brokenInto(pen, CAUTION, WARNING, width - 12).length * lineHeight(WARNING.size) + 3;
}

/** Begins a plate around a room of this size, mm; answers where the room is. */
export function openPlate(pen: SvgPen, room: PageSize, job: DrawingJob, scale: number | undefined): Area {
  const width = room.width + 2 * (EDGE + PAD);
  const inner = width - 2 * EDGE;
  const foot = footHeight(pen, inner);
  const height = room.height + HEAD + foot + 2 * EDGE + 2 * PAD;
  pen.addPage({ width, height });
  const left = EDGE + PAD;
  const base = EDGE + PAD + 4;
  const title = DRAWN_WORDS[job.view];
  pen.text(title, left, base, TITLE);
  const from = pen.widthOf(title, TITLE) + 6;
  const facts = [
    [job.customer, job.car, job.document.name].filter(Boolean).join(', '),
    isCurves(job.view) ? undefined : poseWords(job),
    scale === undefined ? undefined : `scale ${scaleWords(scale)}`,
  ].filter(Boolean);
  const shownFacts = shortened(pen, facts.join(' · '), BODY_SOFT, inner - 2 * PAD - from);
  pen.text(shownFacts, width - left, base, BODY_SOFT, 'right');
  const line = height - EDGE - foot;
  pen.line(EDGE, line, width - EDGE, line, CELL);
  warningSign(pen, EDGE + 3, line + foot / 2 + 1.7, 3.6);
  writeLines(pen, brokenInto(pen, CAUTION, WARNING, inner - 12), EDGE + 10, line + 1.5, WARNING);
  pen.rect(EDGE, EDGE, inner, height - 2 * EDGE, BORDER);
  return { x: left, y: EDGE + PAD + HEAD, width: room.width, height: room.height };
}

/** A rule of round length, so that a print can be checked: how long it is on paper and on the car. */
export function scaleRule(pen: SvgPen, x: number, y: number, job: DrawingJob, scale: number): void {
  const step = job.unit === 'in' ? 25.4 * 10 : 250;
  const length = step / scale;
  const ink = { ...CELL, width: 0.35 };
  pen.line(x, y, x + length, y, ink);
  for (const at of [0, 0.5, 1])
    pen.line(x + at * length, y - (at === 0.5 ? 1 : 1.6), x + at * length, y, ink);
  pen.text(`${job.unit === 'in' ? '10 in' : '250 mm'} of the car`, x + length + 2, y, SMALL);
}

/** "12.0°", for figures of the plate. */
export const degrees = (radians: number) => formatDegrees(toDegrees(radians as never), 1);
export const lengthOf = (job: DrawingJob) => (mm: number) => formatLength(mm, job);

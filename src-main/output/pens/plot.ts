import { FAINT, INK, SOFT } from './colours.ts';
import type { Area } from './papers.ts';
import { capHeight, type PrintPen, type StrokeStyle } from './print-pen.ts';
import { BODY_BOLD, HAIR, SMALL } from './styles.ts';

/** A curve of a plot: numbers not finite leave a gap. */
export interface Curve {
  readonly name: string;
  readonly values: readonly number[];
  readonly line: StrokeStyle;
}

export interface PlotFacts {
  readonly title: string;
  /** "degrees". */
  readonly unit: string;
  readonly at: readonly number[];
  readonly curves: readonly Curve[];
  /** What stands along the lower edge, at values of `at`. */
  readonly marks: readonly (readonly [at: number, words: string])[];
  /** Least height of the range, so that next to nothing does not look like much. */
  readonly least: number;
  /** Runs the axis from right to left. */
  readonly mirrored?: boolean;
}

/** Round steps: 1, 2 or 5 times a power of ten. */
function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = rough / power;
  return (factor < 1.5 ? 1 : factor < 3.5 ? 2 : factor < 7.5 ? 5 : 10) * power;
}

/** Values of round steps that cover a range, the first and last at or beyond its ends. */
export function ticksOver(least: number, most: number, count = 5): number[] {
  const step = roundStep((most - least) / count);
  const from = Math.floor(least / step + 1e-9);
  const to = Math.ceil(most / step - 1e-9);
  // Multiples of the step, free of the sum's rounding.
  return Array.from({ length: to - from + 1 }, (_, i) => Number(((from + i) * step).toPrecision(10)) + 0);
}

/** mm at the left for the figures, above for the title, below for the marks and the key. */
const LEFT = 10;
const ABOVE = 7;
const BELOW = 11;

/** Draws a plot: its frame, round figures at the left, curves in lines that differ by more than colour, a key below. */
export function plot(pen: PrintPen, area: Area, facts: PlotFacts): void {
  const { at, curves, marks, least, mirrored } = facts;
  const values = curves.flatMap((curve) => curve.values.filter(Number.isFinite));
  let low = Math.min(0, ...values);
  let high = Math.max(0, ...values);
  const lack = least - (high - low);
  if (lack > 0) {
    // Away from zero where all is on one side of it.
    const share = low === 0 ? 0 : high === 0 ? 1 : 0.5;
    low -= lack * share;
    high += lack * (1 - share);
  }
  const ticks = ticksOver(low, high);
  const [bottomValue, topValue] = [ticks[0] as number, ticks[ticks.length - 1] as number];
  const [from, to] = [Math.min(...at), Math.max(...at)];
  const x0 = area.x + LEFT;
  const x1 = area.x + area.width;
  const y0 = area.y + ABOVE;
  const y1 = area.y + area.height - BELOW;
  const share = (value: number) => (to === from ? 0.5 : (value - from) / (to - from));
  const px = (value: number) => x0 + (mirrored ? 1 - share(value) : share(value)) * (x1 - x0);
  const py = (value: number) => y1 - ((value - bottomValue) / (topValue - bottomValue)) * (y1 - y0);

  pen.text(facts.title, area.x, area.y + 3.2, BODY_BOLD);
  pen.text(facts.unit, x1, area.y + 3.2, SMALL, 'right');
  const decimals = Math.max(0, -Math.floor(Math.log10((ticks[1] as number) - bottomValue) + 1e-9));
  for (const tick of ticks) {
    const zero = Math.abs(tick) < 1e-12;
    pen.line(x0, py(tick), x1, py(tick), {
      width: zero ? 0.22 : 0.1,
      colour: zero ? SOFT : FAINT,
      cap: 'butt',
    });
    pen.text(tick.toFixed(decimals), x0 - 1.4, py(tick) + capHeight(SMALL.size) / 2, SMALL, 'right');
  }
  marks.forEach(([value, words], i) => {
    pen.line(px(value), y0, px(value), y1, HAIR);
    const first = mirrored ? i === marks.length - 1 : i === 0;
    const last = mirrored ? i === 0 : i === marks.length - 1;
    pen.text(words, px(value), y1 + 3.6, SMALL, first ? 'left' : last ? 'right' : 'centre');
  });
  for (const curve of curves) {
    let run: number[] = [];
    const runs = [run];
    curve.values.forEach((value, i) => {
      if (Number.isFinite(value)) run.push(px(at[i] as number), py(value));
      else if (run.length > 0) {
        run = [];
        runs.push(run);
      }
    });
    for (const points of runs) pen.stroke(points, curve.line);
  }
  let key = area.x;
  for (const { name, line } of curves) {
    pen.line(key, y1 + 7.6, key + 7, y1 + 7.6, line);
    pen.text(name, key + 8.2, y1 + 7.6 + capHeight(SMALL.size) / 2, { ...SMALL, colour: INK });
    key += 8.2 + pen.widthOf(name, SMALL) + 3.4;
  }
}

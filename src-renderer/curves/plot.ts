import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import type { CurveColumn } from './curve-column.ts';
import type { CurveInk } from './curve-ink.ts';
import { type PlotPicture, samePicture } from './plot-picture.ts';
import { decimalsOf, ticksOf } from './ranges.ts';

const token = (element: Element, name: string) =>
  getComputedStyle(element).getPropertyValue(`--${name}`).trim();

/** One plot on its canvas, updated in place. The line at the present pose lies over it as an element of its own. */
export class Plot {
  readonly #plot: uPlot;
  #picture: PlotPicture;

  /** `mirrored` runs the axis from right to left: a turn to the left stands at the left. */
  constructor(host: HTMLElement, inks: readonly CurveInk[], picture: PlotPicture, mirrored = false) {
    this.#picture = picture;
    const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 14;
    const weight = rem / 14;
    const soft = token(host, 'ink-soft');
    const rule = token(host, 'rule');
    const good = token(host, 'good');
    this.#plot = new uPlot(
      {
        width: Math.max(40, host.clientWidth),
        height: Math.max(40, host.clientHeight),
        padding: [4 * weight, 8 * weight, 4 * weight, 0],
        legend: { show: false },
        cursor: { show: false },
        scales: {
          x: { time: false, range: () => this.#span(), dir: mirrored ? -1 : 1 },
          y: { range: () => this.#height() },
        },
        axes: [
          { show: false },
          {
            font: `${10.5 * weight}px ${token(host, 'text')}`,
            stroke: soft,
            size: 36 * weight,
            gap: 4 * weight,
            ticks: { show: false },
            grid: { stroke: rule, width: 0.7 },
            splits: () => ticksOf(this.#picture.range),
            values: (_, splits) => splits.map((value) => value.toFixed(decimalsOf(this.#picture.range))),
          },
        ],
        series: [
          {},
          ...inks.map(({ token: name, width, dash }) => ({
            stroke: token(host, name),
            width: width * weight,
            points: { show: false },
            spanGaps: false,
            pxAlign: false,
            ...(dash ? { dash: dash.map((length) => length * weight) } : {}),
          })),
        ],
        hooks: {
          drawAxes: [
            (plot) => {
              this.#band(plot, token(host, 'steel'));
              this.#lines(plot, rule, good, weight);
            },
          ],
        },
      },
      this.#data(),
      host,
    );
  }

  #span(): [number, number] {
    const { at, span } = this.#picture;
    const [from, to] = span ?? [at[0] ?? -1, at.at(-1) ?? 1];
    return from < to ? [from, to] : [from - 1, to + 1];
  }

  #height(): [number, number] {
    const { middle, rung } = this.#picture.range;
    return [middle - rung.half, middle + rung.half];
  }

  #data(): uPlot.AlignedData {
    return [
      this.#picture.at as number[],
      ...this.#picture.columns.map((column) => column as (number | null | undefined)[]),
    ];
  }

  /** The shaded band, with thin lines along its edges. */
  #band(plot: uPlot, steel: string): void {
    const { band, at } = this.#picture;
    if (!band) return;
    const { ctx, bbox } = plot;
    const edge = (column: CurveColumn) =>
      at.flatMap((place, row) => {
        const value = column[row];
        return typeof value === 'number'
          ? [[plot.valToPos(place, 'x', true), plot.valToPos(value, 'y', true)] as const]
          : [];
      });
    const [lower, upper] = [edge(band.lower), edge(band.upper)];
    ctx.save();
    ctx.beginPath();
    ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
    ctx.clip();
    ctx.beginPath();
    for (const [x, y] of [...lower, ...upper.toReversed()]) ctx.lineTo(x, y);
    ctx.closePath();
    ctx.fillStyle = steel;
    ctx.globalAlpha = 0.16;
    ctx.fill();
    ctx.globalAlpha = 0.5;
    ctx.strokeStyle = steel;
    ctx.lineWidth = uPlot.pxRatio;
    for (const line of [lower, upper]) {
      ctx.beginPath();
      for (const [x, y] of line) ctx.lineTo(x, y);
      ctx.stroke();
    }
    ctx.restore();
  }

  /** The upright line at ride height, the level one at nothing, and the dotted one of what is wanted. */
  #lines(plot: uPlot, rule: string, good: string, weight: number): void {
    const { ctx, bbox } = plot;
    const ratio = uPlot.pxRatio;
    const { wanted } = this.#picture;
    ctx.save();
    ctx.lineWidth = 1.2 * weight * ratio;
    ctx.strokeStyle = rule;
    ctx.beginPath();
    const x = Math.round(plot.valToPos(0, 'x', true));
    ctx.moveTo(x, bbox.top);
    ctx.lineTo(x, bbox.top + bbox.height);
    const zero = Math.round(plot.valToPos(0, 'y', true));
    if (zero >= bbox.top && zero <= bbox.top + bbox.height) {
      ctx.moveTo(bbox.left, zero);
      ctx.lineTo(bbox.left + bbox.width, zero);
    }
    ctx.stroke();
    if (wanted !== undefined) {
      const y = plot.valToPos(wanted, 'y', true);
      ctx.strokeStyle = good;
      ctx.lineWidth = 1.5 * weight * ratio;
      ctx.lineCap = 'round';
      ctx.setLineDash([0.1, 4.5 * weight * ratio]);
      ctx.beginPath();
      ctx.moveTo(bbox.left, y);
      ctx.lineTo(bbox.left + bbox.width, y);
      ctx.stroke();
    }
    ctx.restore();
  }

  /** Draws another picture; one that would look the same as before is not drawn again. */
  show(picture: PlotPicture): void {
    const before = this.#picture;
    this.#picture = picture;
    if (samePicture(before, picture)) return;
    this.#plot.setData(this.#data());
  }

  resize(width: number, height: number): void {
    if (width > 0 && height > 0) this.#plot.setSize({ width, height });
  }

  /** Where the plotting area lies in the host, px. */
  area(): { left: number; top: number; width: number; height: number } {
    const { bbox } = this.#plot;
    const ratio = uPlot.pxRatio;
    return {
      left: bbox.left / ratio,
      top: bbox.top / ratio,
      width: bbox.width / ratio,
      height: bbox.height / ratio,
    };
  }

  destroy(): void {
    this.#plot.destroy();
  }
}

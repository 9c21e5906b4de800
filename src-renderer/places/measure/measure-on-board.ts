import type { Dimension } from '../../../shared-math/adjust/list/index.ts';
import { project, type View } from '../../../shared-math/drawing/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { toDegrees } from '../../../shared-math/units/index.ts';
import type { ScreenPoint } from '../../board/camera.ts';
import type { Contribution, OverlayPart } from '../../board/contributor.ts';
import { dimensionLines } from '../../board/gap-dimension.ts';
import type { OverlayLine } from '../../board/overlay.ts';
import type { OverlaySource } from '../../board/overlay-picture.ts';
import type { Measuring } from '../../document/measuring.svelte.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { TapeList } from './tape-list.svelte.ts';

/** mm of a plumb line beside a lean. */
const PLUMB = 170;

/** The dimension of the row that has the keyboard, in the view that shows it best. */
function dimensionPart(
  dimension: Dimension,
  view: View,
  words: string,
  { shown, onBoard, weight }: OverlaySource,
): OverlayPart {
  const own = shown.includes(view) ? view : (shown[0] as View);
  const at = (point: Point): ScreenPoint => onBoard(own, project(own, point));
  const [from, to] =
    dimension.kind === 'length'
      ? [at(dimension.from), at(dimension.to)]
      : [at(dimension.at), at(dimension.along)];
  const lines =
    dimension.kind === 'length'
      ? dimensionLines(from, to, weight, 'dimension')
      : [
          { points: [...from, ...to], ink: 'dimension' as const },
          { points: [...from, ...at(plumbOf(dimension))], ink: 'guide' as const },
        ];
  const along = toDegrees(Math.atan2(to[1] - from[1], to[0] - from[0]));
  return {
    lines,
    marks: [from, to].map(([x, y]) => ({ x, y, kind: 'tick' as const })),
    firstNotes: [
      {
        id: `measured ${words}`,
        view: own,
        x: (from[0] + to[0]) / 2,
        y: (from[1] + to[1]) / 2,
        clear: 9,
        toward: along - 90,
        lines: [{ text: words, ink: 'dimension', strong: true }],
      },
    ],
  };
}

function plumbOf({ at, along }: Extract<Dimension, { kind: 'angle' }>): Point {
  const way = along[2] >= at[2] ? 1 : -1;
  return [at[0], at[1], at[2] + way * Math.max(PLUMB, Math.abs(along[2] - at[2]))];
}

/** How much larger than life a point's ± is drawn: a sixteenth of an inch could not be seen. */
const DOUBT_SCALE = 20;

/** A cross on each measured point, as long as its ± each way, at a scale that stands beside it. */
function doubtCrosses(
  openLayout: OpenLayout,
  measuring: Measuring,
  { shown, onBoard, bounds, weight }: OverlaySource,
): OverlayPart {
  const { found } = measuring;
  if (!found || (measuring.car.survey.rows.length === 0 && !found.photos?.moved.size)) return {};
  const lines: OverlayLine[] = [];
  for (const point of openLayout.points) {
    const known = found.clean.points.get(point.id);
    if (!known) continue;
    for (const view of shown)
      for (const [axis, name] of (['x', 'y', 'z'] as const).entries()) {
        // Traced on one photo alone, a point is known in two of its three ways.
        if (known.free.includes(name)) continue;
        const reach = DOUBT_SCALE * (known.doubt[axis] as number);
        const [from, to] = [-reach, reach].map((by) =>
          onBoard(view, project(view, point.at.map((v, i) => (i === axis ? v + by : v)) as unknown as Point)),
        ) as [ScreenPoint, ScreenPoint];
        if (Math.hypot(to[0] - from[0], to[1] - from[1]) > 1)
          lines.push({ points: [...from, ...to], ink: 'doubt' });
      }
  }
  if (lines.length === 0) return {};
  const text = `crosses: ± of each point, ${DOUBT_SCALE} times as large`;
  return {
    lines,
    texts: [
      {
        x: bounds.x + 14 * weight,
        y: bounds.y + bounds.height - 16 * weight,
        text,
        ink: 'soft',
        strong: false,
        align: 'left',
      },
    ],
  };
}

function joined(a: OverlayPart, b: OverlayPart): OverlayPart {
  return { ...a, ...b, lines: [...(a.lines ?? []), ...(b.lines ?? [])] };
}

/** What is being measured, drawn where it is measured. */
export const measureOnBoard =
  (openLayout: OpenLayout, measuring: Measuring, tape: TapeList) => (): Contribution => ({
    id: 'measure',
    overlay: (source) => {
      if (!tape.here) return {};
      const doubts = doubtCrosses(openLayout, measuring, source);
      const { row, between } = tape;
      if (row) {
        const entry = measuring.car.taken[row.id];
        return joined(doubts, dimensionPart(row.dimension, row.view, entry?.typed ?? row.name, source));
      }
      if (between?.from && between.to) {
        const [from, to] = [between.from, between.to].map(
          (id) => openLayout.points.find((point) => point.id === id)?.at,
        );
        if (from && to)
          return joined(doubts, dimensionPart({ kind: 'length', from, to }, openLayout.lastView, '', source));
      }
      return doubts;
    },
  });

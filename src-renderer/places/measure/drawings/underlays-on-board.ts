import type { View, ViewPoint } from '../../../../shared-math/drawing/index.ts';
import { type DrawnLayer, underlayTransform } from '../../../../shared-math/underlay/index.ts';
import type { BoardView } from '../../../board/board-view.svelte.ts';
import type { Contribution } from '../../../board/contributor.ts';
import { mixed } from '../../../board/inks.ts';
import type { Underlays } from './underlays.svelte.ts';

/** px that a click may be off a line or a spot. */
const REACH = 12;

/** The lines of a layer as the canvas keeps them, in the drawing's own unit. */
const paths = new WeakMap<DrawnLayer, Path2D>();

function pathOf(layer: DrawnLayer): Path2D {
  let path = paths.get(layer);
  if (path) return path;
  path = new Path2D();
  for (const { points, closed } of layer.lines) {
    path.moveTo(points[0] as number, points[1] as number);
    for (let i = 2; i + 1 < points.length; i += 2) path.lineTo(points[i] as number, points[i + 1] as number);
    if (closed) path.closePath();
  }
  paths.set(layer, path);
  return path;
}

/** What of the board a view has to itself, px: left, top, width, height. */
function roomOf(board: BoardView, view: View): readonly [number, number, number, number] {
  const { width, height } = board.size;
  if (board.shown.length === 1) return [0, 0, width, height];
  const { right, down } = board.gridGaps;
  const { scale, x, y } = board.camera;
  const [across, below] = [right * scale + x, down * scale + y];
  if (view === 'top') return [across, 0, width - across, below];
  if (view === 'side') return [across, below, width - across, height - below];
  return [0, below, across, height - below];
}

/** The drawings under the views, what points are drawn to, and what a click on a drawing does. */
export const underlaysOnBoard =
  (underlays: Underlays) =>
  (board: BoardView): Contribution => {
    const placeAt = (view: View, x: number, y: number): ViewPoint => {
      const [right, down] = board.sheet.origin[view];
      const { scale, x: left, y: top } = board.camera;
      return [(x - left) / scale - right, (y - top) / scale - down];
    };

    function underlay(): ReturnType<NonNullable<Contribution['underlay']>> {
      const shown = underlays.all.filter(
        (each) => each.shown && board.shown.includes(each.view) && underlays.layersOf(each).length > 0,
      );
      if (shown.length === 0) return undefined;
      const pictures = shown.map((each) => ({
        layers: underlays.layersOf(each),
        transform: underlayTransform(each),
        origin: board.onBoard(each.view, [0, 0]),
        scale: board.camera.scale,
        unit: each.unit,
        room: roomOf(board, each.view),
      }));
      return (context, palette) => {
        for (const { layers, transform, origin, scale, unit, room } of pictures) {
          context.save();
          context.beginPath();
          context.rect(...room);
          context.clip();
          context.translate(origin[0], origin[1]);
          context.scale(scale, scale);
          context.transform(...transform);
          // Brown as an old print: neither the car's ink nor what moves.
          context.strokeStyle = mixed(palette.inkSoft, palette.stop, 0.4);
          context.lineWidth = palette.weight / (scale * unit);
          for (const layer of layers) context.stroke(pathOf(layer));
          context.restore();
        }
      };
    }

    return {
      id: 'underlays',
      underlay,
      snaps: (view, place, reach) => underlays.drawnTo(view, place, reach),
      overlay: ({ onBoard }) => {
        const { first, underlay: chosen } = underlays;
        if (!first || !chosen || underlays.tool !== 'second') return {};
        const [a, b, c, d, e, f] = underlayTransform(chosen);
        const [x, y] = first.spot;
        const spot = onBoard(chosen.view, [a * x + c * y + e, b * x + d * y + f]);
        return { marks: [{ x: spot[0], y: spot[1], kind: 'tick' as const }] };
      },
      pointer: {
        move: () => undefined,
        tap: (x, y) => {
          const { underlay: chosen, tool } = underlays;
          if (!chosen || !tool) return false;
          underlays.click(placeAt(chosen.view, x, y), (REACH * board.weight) / board.camera.scale);
          return true;
        },
        leave: () => undefined,
      },
      cursor: () => (underlays.tool ? 'crosshair' : undefined),
    };
  };

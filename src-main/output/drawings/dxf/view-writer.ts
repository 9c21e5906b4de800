import { type Box, project, type View } from '../../../../shared-math/drawing/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import type { Spot } from '../strokes/stroke.ts';
import type { ViewStroke } from '../strokes/view-strokes.ts';
import type { DrawingFile } from './drawing-file.ts';
import { layerOf, type ViewLayer } from './layers.ts';

/** A view in its place on the drawing. */
export interface PlacedView {
  readonly view: View;
  /** Where the car's origin shows. */
  readonly origin: Spot;
  /** What it covers in its own plane, right and down. */
  readonly box: Box;
}

export const same = (a: Spot, b: Spot) => Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-6;

/** One view being written into the file. */
export class ViewWriter {
  readonly file: DrawingFile<ViewLayer>;
  readonly placed: PlacedView;

  constructor(file: DrawingFile<ViewLayer>, placed: PlacedView) {
    this.file = file;
    this.placed = placed;
  }

  /** Where a point of the car is drawn. */
  at(point: Point): Spot {
    const [right, down] = project(this.placed.view, point);
    return this.on([right, -down + 0]);
  }

  /** A place of the view's own plane, right and up, on the drawing. */
  on([x, y]: Spot): Spot {
    return [this.placed.origin[0] + x, this.placed.origin[1] + y];
  }

  /** A line of the view's own plane, right and down by turns. */
  line(layer: ViewLayer, places: readonly number[], closed: boolean): void {
    const spots: Spot[] = [];
    for (let i = 0; i + 1 < places.length; i += 2)
      spots.push(this.on([places[i] as number, -(places[i + 1] as number)]));
    const [a, b] = spots;
    if (!a || !b) return;
    if (spots.length === 2) this.file.stroke(layer, { kind: 'line', a, b });
    else this.file.polyline(layer, spots, closed);
  }

  /** Strokes; straight ones that go on from one another are one line. */
  strokes(all: readonly ViewStroke[]): void {
    let line: Spot[] = [];
    let layer: ViewLayer | undefined;
    const end = () => {
      if (layer && line.length > 2) {
        const closed = line.length > 3 && same(line[0] as Spot, line.at(-1) as Spot);
        this.file.polyline(layer, closed ? line.slice(0, -1) : line, closed);
      } else if (layer && line.length === 2)
        this.file.stroke(layer, { kind: 'line', a: line[0] as Spot, b: line[1] as Spot });
      line = [];
    };
    for (const { part, kind, stroke } of all) {
      const own = layerOf(part, kind);
      if (stroke.kind === 'curve') {
        end();
        this.file.stroke(own, { ...stroke, centre: this.on(stroke.centre) });
        continue;
      }
      const [a, b] = [this.on(stroke.a), this.on(stroke.b)];
      if (own !== layer || line.length === 0 || !same(line.at(-1) as Spot, a)) {
        end();
        line = [a];
      }
      layer = own;
      line.push(b);
    }
    end();
  }
}

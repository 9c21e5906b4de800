import type { Point } from '../geometry/points.ts';
import { add, scaled } from '../geometry/vectors.ts';
import type { ShaftDocument, Side } from '../layout/index.ts';
import type { Sketch, SketchPoint } from './answer.ts';

const point = ([x, y, z]: Point, view: 'side' | 'top'): SketchPoint => [0 - x, view === 'side' ? 0 - z : y];

/** mm of column and box that a sketch shows. */
const STUB = 180;

/** The shaft from the side and from above, in the directions of the board's own views. */
export function sketchesOf(shaft: ShaftDocument, side: Side): Sketch[] {
  return (['side', 'top'] as const).map((view): Sketch => {
    const at = (place: Point) => point(place, view);
    const { column, box, joints, shafts } = shaft;
    return {
      title:
        view === 'side'
          ? 'From the side, front to the left'
          : `From above, front to the left, driver on the ${side}`,
      ends: [
        { name: 'column', from: at(add(column.end, scaled(column.axis, -STUB))), to: at(column.end) },
        { name: 'box', from: at(add(box.end, scaled(box.axis, STUB / 2))), to: at(box.end) },
      ],
      line: [column.end, ...joints.map(({ centre }) => centre), box.end].map(at),
      joints: joints.map(({ centre, kind }) => ({ at: at(centre), double: kind === 'double' })),
      supports: shaft.supports.flatMap(({ shaft: index, at: share }) => {
        const [from, to] = [joints[index], joints[index + 1]];
        if (!from || !to || !shafts[index]) return [];
        const [a, b] = [scaled(from.centre, 1 - share), scaled(to.centre, share)];
        return [at(add(a, b))];
      }),
    };
  });
}

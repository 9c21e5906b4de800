import { mirrored, type Point } from '../geometry/points.ts';
import type { LayoutDocument } from './schema.ts';
import { withShaftAtBox, withShaftPoint } from './shaft-points.ts';
import { withValueAt } from './values.ts';

/** As `moveHardpoint`, but a wheel centre leaves the axle where it is: for places that were each seen by themselves. */
export function placeHardpoint(document: LayoutDocument, id: string, to: Point): LayoutDocument {
  const keys = id.split('.');
  const root = keys[0] as 'axle' | 'location';
  if (keys[1] === 'right' && (document[root] as { right: unknown }).right === 'mirror')
    return withValueAt(document, [root, 'left', ...keys.slice(2)], mirrored(to));
  if (id === 'steering.box.sectorCentre') {
    const { sectorCentre: from, pitmanBall } = document.steering.box;
    const ball = pitmanBall.map((value, axis) => value + (to[axis] as number) - (from[axis] as number));
    const armed = withValueAt(document, ['steering', 'box', 'pitmanBall'], ball);
    return withShaftAtBox(withValueAt(armed, ['steering', 'box', 'sectorCentre'], to), from);
  }
  if (keys[0] === 'shaft' && document.shaft)
    return { ...document, shaft: withShaftPoint(document.shaft, id, to) };
  return withValueAt(document, keys, to);
}

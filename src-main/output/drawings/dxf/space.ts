import { point3d } from '@tarikjabiri/dxf';
import type { DrawingJob } from '../job.ts';
import { sceneOf } from '../scene.ts';
import { dxfText, inUnit, newDrawing } from './layers.ts';
import { centreLines } from './links-in-space.ts';

/** mm that a point's name is high. */
const NAME = 9;

/** Points and middle lines in the car's own frame: x forward, y left, z up, the origin on the ground below the axle. */
export function spaceDxf(job: DrawingJob): string {
  const scene = sceneOf(job);
  const dxf = newDrawing(job.unit);
  const size = inUnit(job.unit);
  const place = ([x, y, z]: readonly [number, number, number]) => point3d(size(x), size(y), size(z));
  for (const { layer, points } of centreLines(scene))
    for (let i = 1; i < points.length; i += 1) {
      const [from, to] = [points[i - 1], points[i]];
      if (from && to) dxf.addLine(place(from), place(to), { layerName: layer });
    }
  for (const { at, name } of scene.points) {
    dxf.addPoint(size(at[0]), size(at[1]), size(at[2]), { layerName: 'hardpoints' });
    dxf.addText(place(at), size(NAME), dxfText(name), { layerName: 'hardpoints' });
  }
  return dxf.stringify();
}

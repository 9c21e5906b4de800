import type { DrawingJob } from '../job.ts';
import { sceneOf } from '../scene.ts';
import { DrawingFile } from './drawing-file.ts';
import { VIEW_LAYERS } from './layers.ts';
import { centreLines } from './links-in-space.ts';

/** mm that a point's name is high. */
const NAME = 9;
/** What its dashes and points are made to be read at. */
const SCALE = 5;

/** Points and middle lines in the car's own frame: x forward, y left, z up, the origin on the ground below the axle. */
export function spaceDxf(job: DrawingJob): string {
  const scene = sceneOf(job);
  const { unit, fraction } = job;
  const file = new DrawingFile({ unit, fraction, scale: SCALE, layers: VIEW_LAYERS });
  for (const { layer, points } of centreLines(scene))
    for (let i = 1; i < points.length; i += 1) {
      const [from, to] = [points[i - 1], points[i]];
      if (from && to) file.lineInSpace(layer, from, to);
    }
  for (const { at, name } of scene.points) file.pointInSpace('hardpoints', at, name, NAME);
  return file.toString();
}

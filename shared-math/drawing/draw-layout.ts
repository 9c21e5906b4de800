import type { Layout } from '../layout/index.ts';
import type { Drawing } from './drawing.ts';
import { drawBeam } from './parts/beam.ts';
import { drawLateral } from './parts/lateral.ts';
import { LOCATION_PARTS } from './parts/location-kinds/index.ts';
import { drawObstacles } from './parts/obstacles.ts';
import { drawRails } from './parts/rails.ts';
import { drawShaft } from './parts/shaft.ts';
import { drawSteering, inputSeen } from './parts/steering.ts';
import { drawGround, drawWheels } from './parts/wheels.ts';
import { Pen } from './pen.ts';

/** mm that the ground line runs beyond the tyres. */
const GROUND = { ahead: 420, behind: 1150, beside: 170 };

/**
 * A layout as parts to be drawn to scale: built once for an edit, then placed in any solved pose and outlined in any
 * view. What the layout states is drawn where it states it; what it leaves open is drawn at a common size.
 * Frame: vehicle. Units: mm. Needs a validated layout.
 */
export function drawLayout(layout: Layout): Drawing {
  const pen = new Pen();
  drawGround(pen, layout, GROUND);
  drawRails(pen, layout);
  drawObstacles(pen, layout);
  drawBeam(pen, layout);
  LOCATION_PARTS[layout.location.kind](pen, layout);
  drawLateral(pen, layout);
  drawWheels(pen, layout);
  drawSteering(pen, layout);
  drawShaft(pen, layout, inputSeen(layout));
  return pen.drawing();
}

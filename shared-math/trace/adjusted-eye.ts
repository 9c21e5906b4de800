import { type Eye, project, unproject, VIEW_AXES } from '../drawing/index.ts';
import type { Point } from '../geometry/points.ts';
import type { Photo } from '../layout/index.ts';
import { SEEN_SIZE, see } from './camera-model.ts';
import { cameraStart } from './photo-camera.ts';
import { depthOf } from './planes.ts';

/**
 * Where a photo's camera stood by an adjustment of all photos and the tape, as an eye. The board shows the photo laid flat by
 * its own corners alone, which differs by clicking from what that camera saw: what the eye sees at a place of the plane
 * is shown where the photo, its lens as the adjustment has it, shows that place.
 * Frame:    vehicle; the view's plane. Units: mm. Shapes: `camera` CAMERA_UNKNOWNS, as `adjustedCameras` has it.
 * Outcomes: undefined if the photo is not to scale, or nothing was found of its camera.
 * Checked:  tests/unit/trace/adjusted-eye.test.ts (an independent camera).
 */
export function adjustedEye(photo: Photo, camera: Float64Array | undefined): Eye | undefined {
  const start = camera && cameraStart(photo);
  if (!start) return undefined;
  const { view, size } = photo;
  const { axis, sign } = VIEW_AXES[view].toward;
  const depth = depthOf(photo);
  const at: Point = [camera[4] as number, camera[5] as number, camera[6] as number];
  const frame = { turn: start.turn, size };
  const seen = new Float64Array(SEEN_SIZE);
  const keep: [number, number, number] = [0, 0, 0];
  keep[axis] = depth;
  return {
    foot: project(view, at),
    distance: sign * (at[axis] - depth),
    depth,
    onto: (place) =>
      see(camera, 0, frame, Float64Array.from(unproject(view, place, keep)), 0, seen)
        ? start.plane.toPlace([seen[0] as number, seen[1] as number])
        : undefined,
  };
}

import type { Homography, Spot } from './homography.ts';

/** Where the camera stood against the plane that was straightened: the foot of its perpendicular and how far off. */
export interface CameraPlace {
  readonly foot: Spot;
  readonly distance: number;
}

type HomographyColumn = readonly [number, number, number];
const inner = (a: HomographyColumn, b: HomographyColumn) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const unit = (a: HomographyColumn): HomographyColumn => {
  const size = Math.hypot(...a);
  return [a[0] / size, a[1] / size, a[2] / size];
};

function standing(toPhoto: Homography, [cx, cy]: Spot, focal: number): CameraPlace {
  const column = (j: number): HomographyColumn => {
    const w = toPhoto[6 + j] as number;
    return [((toPhoto[j] as number) - cx * w) / focal, ((toPhoto[3 + j] as number) - cy * w) / focal, w];
  };
  const [g1, g2, g3] = [column(0), column(1), column(2)];
  const scale = (Math.hypot(...g1) + Math.hypot(...g2)) / 2;
  const r1 = unit(g1);
  const off = inner(r1, g2);
  const r2 = unit([g2[0] - off * r1[0], g2[1] - off * r1[1], g2[2] - off * r1[2]]);
  const r3: HomographyColumn = [
    r1[1] * r2[2] - r1[2] * r2[1],
    r1[2] * r2[0] - r1[0] * r2[2],
    r1[0] * r2[1] - r1[1] * r2[0],
  ];
  const t: HomographyColumn = [g3[0] / scale, g3[1] / scale, g3[2] / scale];
  return { foot: [-inner(r1, t), -inner(r2, t)], distance: Math.abs(inner(r3, t)) };
}

/**
 * Where the camera stood, from how it shows a plane and how far from that plane it was by the tape. A pinhole with its
 * axis through the picture's middle and square pixels: the homography is K [r1 r2 t] with one unknown, the focal length,
 * which is the one that gives the measured distance.
 * Frame:    the plane's own; lengths in its units. Shapes: `toPhoto` from plane to undistorted px.
 * Outcomes: the place; undefined if no focal length from a tenth to fifty picture widths gives the distance.
 * Source:   own derivation from the pinhole camera. Checked: tests/unit/trace/photo-plane.test.ts.
 */
export function cameraPlace(toPhoto: Homography, size: Spot, distance: number): CameraPlace | undefined {
  const middle: Spot = [size[0] / 2, size[1] / 2];
  let [low, high] = [0.1 * size[0], 50 * size[0]];
  if (
    !(
      standing(toPhoto, middle, low).distance < distance &&
      standing(toPhoto, middle, high).distance > distance
    )
  )
    return undefined;
  for (let step = 0; step < 80; step += 1) {
    const focal = Math.sqrt(low * high);
    if (standing(toPhoto, middle, focal).distance < distance) low = focal;
    else high = focal;
  }
  return { foot: standing(toPhoto, middle, low).foot, distance };
}

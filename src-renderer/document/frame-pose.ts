/** How the frame stands over the ground: risen by mm, and rolled (rad, left side up) about a point that high. */
export interface FramePose {
  readonly rise: number;
  readonly roll: number;
  /** mm above the ground at ride height, in the car's centre plane. */
  readonly about: number;
}

/** At ride height, as the layout is drawn. */
export const LEVEL: FramePose = { rise: 0, roll: 0, about: 0 };

export const isLevel = ({ rise, roll }: FramePose): boolean => rise === 0 && roll === 0;

/**
 * Takes points from the frame's axes to those of the ground below it, in place: three numbers each, mm, from the
 * number `from` up to the number `to`. The frame turns about x as the left side goes up.
 */
export function placeFrame(points: Float64Array, framePose: FramePose, from = 0, to = points.length): void {
  if (isLevel(framePose)) return;
  const { rise, about } = framePose;
  const cos = Math.cos(framePose.roll);
  const sin = Math.sin(framePose.roll);
  for (let at = from; at < to; at += 3) {
    const y = points[at + 1] as number;
    const above = (points[at + 2] as number) - about;
    points[at + 1] = y * cos - above * sin;
    points[at + 2] = about + rise + y * sin + above * cos;
  }
}

import type { Photo } from '../layout/index.ts';
import type { Radians } from '../units/index.ts';
import { type Reached, withLevelOff } from './left-out.ts';
import { clickDoubt } from './photo-doubts.ts';
import type { PhotoSpot } from './photo-places.ts';
import type { PhotoPlane } from './photo-plane.ts';
import { CHANCE } from './sights.ts';

/** By what a photo's level is checked: what was clicked for it, or the rectangle where a level line was given beside it. */
export type CheckedBy = 'floor' | 'wheels' | 'rectangle';

export interface LevelCheck {
  readonly by: CheckedBy;
  /** How far what it is checked by runs from where it should; above 0 where its right end lies lower. */
  readonly angle: Radians;
  /** One standard deviation of that by clicking. */
  readonly doubt: Radians;
  readonly agrees: boolean;
  /** The point that the disagreement puts off most, and by how much: mm. */
  readonly worst: { readonly point: string; readonly off: number } | undefined;
}

interface Ran {
  readonly angle: number;
  /** rad, one standard deviation by the clicks of its ends. */
  readonly doubt: number;
}

/** How a line runs in the view's plane: its right end below level. */
function runOf(
  plane: PhotoPlane,
  from: PhotoSpot | undefined,
  to: PhotoSpot | undefined,
  click: number,
): Ran | undefined {
  const [a, b] = [from && plane.toPlace(from), to && plane.toPlace(to)];
  if (!a || !b) return undefined;
  const [x, y] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(x, y);
  if (!(length > 0)) return undefined;
  return { angle: Math.atan2(y, x), doubt: (Math.SQRT2 * click * plane.mmPerPixel) / length };
}

/** An angle within a quarter turn of level: which end was clicked first is all the same. */
const turned = (angle: number): number => angle - Math.PI * Math.round(angle / Math.PI);

/**
 * Whether what a photo was levelled by agrees with something else that is level: the floor, both wheel centres, or, where a
 * level line was given, the rectangle's own sides. From above, where nothing is level, both wheel centres lie square
 * across the car. Lines that run alongside the photo's plane keep their way at any depth.
 * Frame: the view's plane. Units: rad, mm. Shapes: `points` are those that are traced.
 * Outcomes: undefined if there is nothing to check by.
 * Checked: tests/unit/trace/level-check.test.ts (an independent camera that is turned).
 */
export function checkLevel(
  photo: Photo,
  plane: PhotoPlane,
  points: readonly Reached[],
): LevelCheck | undefined {
  const { levelCheck, level, straighten, view } = photo;
  const click = clickDoubt(photo);
  const [first, second] = straighten?.points ?? [];
  const by: CheckedBy | undefined = levelCheck?.by ?? (level && straighten ? 'rectangle' : undefined);
  const checked = levelCheck
    ? runOf(plane, levelCheck.from, levelCheck.to, click)
    : level && runOf(plane, first?.at, second?.at, click);
  // What the photo was levelled by runs level in it by how it was put to scale; its own clicks are as much in doubt.
  const own = level ? runOf(plane, level.from, level.to, click) : runOf(plane, first?.at, second?.at, click);
  if (!by || !checked || !own) return undefined;
  const across = levelCheck?.by === 'wheels' && view === 'top' ? Math.PI / 2 : 0;
  const angle = turned(checked.angle - across);
  const doubt = Math.hypot(checked.doubt, own.doubt);
  return {
    by,
    angle: angle as Radians,
    doubt: doubt as Radians,
    agrees: Math.abs(angle) <= CHANCE * doubt,
    worst: withLevelOff(photo, points, angle as Radians),
  };
}

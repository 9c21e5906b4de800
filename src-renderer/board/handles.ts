import type { View, ViewPoint } from '../../shared-math/drawing/index.ts';
import type { Hardpoint } from '../../shared-math/layout/index.ts';

/** A hardpoint as one view shows it, on the screen. */
export interface Handle {
  readonly view: View;
  readonly point: Hardpoint;
  readonly x: number;
  readonly y: number;
}

/** px: how far from its middle a handle is still hit, with a mouse or pen and with a finger. */
export const HIT_RADIUS = 14;
export const HIT_RADIUS_TOUCH = 24;

/** px by which a steering point, and a selected one, win over others at the same spot. */
const STEERING_FIRST = 3;
const SELECTED_FIRST = 5;

export function isSteering(point: Hardpoint): boolean {
  return /^(steering|shaft)\./.test(point.id);
}

/** Column end and box input lie close to the joints on them, which are moved far more often. */
export function standsBack(point: Hardpoint): boolean {
  return /^shaft\.(column|box)\.end$/.test(point.id);
}

/** Whether a point is a rail's or an obstacle's. */
export function isOfBody(point: Hardpoint): boolean {
  return /^(rails|obstacles)\./.test(point.id);
}

/**
 * Whether a view shows a handle for a point. From the side a mirrored point lies behind its twin of the near, left
 * side; moving either moves both, so one handle does.
 */
export function hasHandle(point: Hardpoint, view: View): boolean {
  return !(view === 'side' && point.twin !== undefined && point.id.split('.')[1] === 'right');
}

/** The handle under a screen place: the nearest within reach, with what is worked at most before the rest. */
export function handleAt(
  handles: readonly Handle[],
  at: ViewPoint,
  radius: number,
  selection: string | null,
): Handle | undefined {
  let best: Handle | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const handle of handles) {
    const away = Math.hypot(handle.x - at[0], handle.y - at[1]);
    if (away > radius) continue;
    const { point } = handle;
    const first =
      point.id === selection ? SELECTED_FIRST : isSteering(point) && !standsBack(point) ? STEERING_FIRST : 0;
    if (away - first < least) {
      best = handle;
      least = away - first;
    }
  }
  return best;
}

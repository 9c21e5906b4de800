import { formatDegrees } from '../../../shared-math/units/index.ts';
import type { Held } from './ride-messages.ts';

export const HELD_WORDS: Record<Held, string> = {
  axle: 'the axle',
  left: 'the left tyre',
  right: 'the right tyre',
};

/** Degrees below which a steer is none that anybody could show on a car. */
const NO_STEER = 0.005;

/** Which way both wheels together point: "0.84° left". */
export function steerWords(degrees: number, decimals = 2): string {
  if (Math.abs(degrees) < NO_STEER) return 'straight';
  return `${formatDegrees(Math.abs(degrees), decimals)} ${degrees > 0 ? 'left' : 'right'}`;
}

/** mm below which nothing has moved that a tape would show. */
const NO_RISE = 0.4;

/** How far an axle or wheel stands from where it is drawn; the figure comes with its unit and without a sign. */
export function riseWords(mm: number, figure: string): string {
  if (Math.abs(mm) < NO_RISE) return 'at ride height';
  return `${figure} ${mm > 0 ? 'up' : 'down'}`;
}

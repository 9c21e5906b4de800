import type { Radians } from '../units/index.ts';

/**
 * Which way the fronts of the wheels go: "to the left" for a steer above 0 (ISO 8855: counter-clockwise from above);
 * empty where they do not.
 */
export function steerWay(steer: Radians): string {
  if (steer === 0) return '';
  return steer > 0 ? 'to the left' : 'to the right';
}

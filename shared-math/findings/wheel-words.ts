import type { Layout } from '../layout/index.ts';
import { wheelPlaces } from '../sweep/index.ts';

/** "the left wheel 3 in up and the right 1/16 in down": where the wheels stand in a pose, from ride height. mm, rad. */
export function wheelWords(
  layout: Layout,
  pose: { readonly heave: number; readonly roll: number },
  length: (mm: number) => string,
): string {
  const { left, right } = wheelPlaces(layout, pose);
  const one = (mm: number) => {
    const size = length(Math.abs(mm));
    return size === length(0) ? 'at ride height' : `${size} ${mm > 0 ? 'up' : 'down'}`;
  };
  return one(left) === one(right)
    ? `both wheels ${one(left)}`
    : `the left wheel ${one(left)} and the right ${one(right)}`;
}

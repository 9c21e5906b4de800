import type { Layout } from '../layout/index.ts';
import type { LengthStyle, Radians } from '../units/index.ts';
import type { HandPose } from './moved-car.ts';

/** A car as a page that moves carries it. */
export interface CarData {
  readonly name: string;
  readonly layout: Layout;
  /** Handwheel at the right and at the left lock, rad. */
  readonly locks: readonly [right: Radians, left: Radians];
}

/** What a page that moves carries in itself: one car, or the car and the one that it is compared with; mm, rad. */
export interface PageData {
  readonly cars: readonly CarData[];
  readonly style: LengthStyle;
  /** The pose in which the page opens, and which it shows without its script. */
  readonly start: HandPose;
}

/** A layout less all that is said of it and shown under it, of which a page that moves has no use: names, notes, photos. */
export function carriedLayout(layout: Layout): Layout {
  const { underlays: _, origins: __, ...rest } = layout;
  const unnamed = <Named extends { readonly name: string }>(entry: Named): Named => ({ ...entry, name: '' });
  return {
    ...rest,
    name: '',
    notes: '',
    photos: [],
    rails: layout.rails.map(unnamed),
    obstacles: layout.obstacles.map(unnamed),
  };
}

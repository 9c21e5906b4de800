import type { Layout } from '../layout/index.ts';
import type { RailFaces } from './rail-faces.ts';
import { BODY, PLATE, SECTOR } from './sizes.ts';

// How a side steer box and its arm lie across the left rail, seen along the car.

export type SideMount = 'outside' | 'top' | 'through' | 'inside';

/** mm along the sector shaft from the middle of a box to the arm before its face, as usual. */
const TO_ARM = 20;
/** mm of an arm's half thickness and its bolt, beside the rail. */
const ARM_BESIDE = 18;
/** mm from the rail to the pitman ball, beyond which an arm that passes the rail does not come. */
const OFF_MOST = 90;

/** "outside the RAIL". */
export const SIDE_WHERE: Readonly<Record<SideMount, string>> = {
  outside: 'outside the RAIL',
  top: 'on top of the RAIL',
  through: 'inside the RAIL, its arm outside',
  inside: 'inside the RAIL, its drag link under it',
};

/**
 * mm from the rail's face on the ball's side to the pitman ball, least and most; undefined where the sector shaft would have
 * to reach too far. Beside the rail, plate and box lie between; past it, the arm's own air. `size`: 1, more of an assisted box.
 */
export function ballOffRail(
  mount: SideMount,
  { outer, inner }: RailFaces,
  size: number,
  clearance: number,
): readonly [number, number] | undefined {
  const beside = BODY.cover * size + TO_ARM;
  if (mount === 'outside' || mount === 'inside') return [beside + PLATE.least, beside + PLATE.most];
  const width = outer - inner;
  const past = mount === 'through' ? width + PLATE.least : (width - (BODY.cover + BODY.face) * size) / 2;
  const most = Math.min(OFF_MOST, SECTOR.most - past);
  const least = clearance + ARM_BESIDE;
  return most > least ? [least, most] : undefined;
}

/** y of the pitman ball that far off the rail's face. */
export function ballAcross(mount: SideMount, { outer, inner }: RailFaces, off: number): number {
  return mount === 'inside' ? inner - off : outer + off;
}

/** mm inboard from the arm to the middle of the box, along the sector shaft; negative where the box is outboard of its arm. */
export function boxInboard(
  mount: SideMount,
  { outer, inner }: RailFaces,
  ball: number,
  size: number,
): number {
  switch (mount) {
    case 'outside':
      return TO_ARM;
    case 'inside':
      return -TO_ARM;
    case 'through':
      return ball - (inner - PLATE.least - BODY.face * size);
    case 'top':
      // The body's middle over the rail's.
      return ball - ((outer + inner) / 2 + ((BODY.cover - BODY.face) / 2) * size);
  }
}

/**
 * rad in plan, counter-clockwise from above, by which a box at (x, y) would have to be turned for its input to leave straight
 * toward the column's end; 0 where no column is drawn or the box is not clear ahead of it.
 */
export function towardColumn({ shaft }: Pick<Layout, 'shaft'>, x: number, y: number): number {
  if (!shaft) return 0;
  const [cx, cy] = shaft.column.end;
  return x - cx < 50 ? 0 : Math.atan2(y - cy, x - cx);
}

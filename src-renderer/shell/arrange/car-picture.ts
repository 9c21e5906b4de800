import {
  type Box,
  drawLayout,
  isClosed,
  isShown,
  type Outline,
  outline,
  paintOrder,
  placeAtRide,
  type Role,
  roomFor,
  type Shape,
  type View,
} from '../../../shared-math/drawing/index.ts';
import type { Layout } from '../../../shared-math/layout/index.ts';

/** One stroke of a small drawing, as SVG takes it; mm of the view's own plane. */
export interface PictureStroke {
  readonly d: string;
  readonly role: Role;
  readonly ink: Shape['ink'];
  readonly fill: Shape['fill'];
}

const decimal = (value: number) => String(Math.round(value * 10) / 10);

function pathOf(line: Outline, closed: boolean): string {
  const places: string[] = [];
  for (let i = 0; i + 1 < line.length; i += 2)
    places.push(`${decimal(line[i] as number)} ${decimal(line[i + 1] as number)}`);
  return places.length < 2 ? '' : `M${places.join('L')}${closed ? 'Z' : ''}`;
}

/** A layout at ride height as one view shows it, in the order in which it is painted. */
export function pictureOf(layout: Layout, view: View): PictureStroke[] {
  const drawing = drawLayout(layout);
  const placed = roomFor(drawing);
  placeAtRide(drawing, placed);
  const line: Outline = [];
  return paintOrder(drawing, placed, view).flatMap(({ role, shapes }) =>
    shapes.flatMap((shape) => {
      if (!isShown(shape, view) || role === 'ground') return [];
      outline(shape, placed, view, line);
      const d = pathOf(line, isClosed(shape));
      return d === '' ? [] : [{ d, role, ink: shape.ink, fill: shape.fill }];
    }),
  );
}

/** mm ahead of the axle and behind it that a plan of the steering shows. */
const PLAN = { ahead: 430, behind: 1180 };

/** What a plan of the front end has to show, the same for all arrangements of one car. */
export function planBox({ axle, car, shaft }: Layout): Box {
  const half = Math.max(...(['left', 'right'] as const).map((side) => Math.abs(axle[side].wheelCentre[1])));
  const across = half + car.tyreWidth / 2 + 30;
  // The column's end is the car's own, and alike in all of them.
  const behind = Math.max(PLAN.behind, shaft ? 70 - shaft.column.end[0] : 0);
  return { left: -PLAN.ahead, right: behind, top: -across, bottom: across };
}

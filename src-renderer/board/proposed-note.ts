import { project, type View, type ViewPoint } from '../../shared-math/drawing/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import type { ScreenPoint } from './camera.ts';
import type { Note } from './overlay-picture.ts';

export type OnBoard = (view: View, place: ViewPoint) => ScreenPoint;

/** The name of what is proposed, beside a point of it. */
export function proposedAt(point: Point | undefined, shown: readonly View[], onBoard: OnBoard): Note[] {
  const view = (['side', 'front', 'top'] as const).find((each) => shown.includes(each));
  if (!point || !view) return [];
  const [x, y] = onBoard(view, project(view, point));
  return [
    {
      id: `proposed ${view}`,
      view,
      x,
      y,
      clear: 9,
      toward: 30,
      lines: [{ text: 'proposed', ink: 'steel', strong: true }],
    },
  ];
}

import { project, type View, type ViewPoint } from '../../../shared-math/drawing/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { jointOfPoint } from '../../../shared-math/layout/index.ts';
import type { Route } from '../../../shared-math/shaft/index.ts';
import { formatDegrees, toDegrees } from '../../../shared-math/units/index.ts';
import type { ScreenPoint } from '../../board/camera.ts';
import type { OverlayInk, OverlayLine, OverlayMark } from '../../board/overlay.ts';
import type { Note } from '../../board/overlay-picture.ts';

/** What the joints of the shaft say of themselves on the board. */
export interface ShaftPicture {
  readonly lines: readonly OverlayLine[];
  readonly marks: readonly OverlayMark[];
  readonly notes: readonly Note[];
}

export interface ShaftPictureSource {
  readonly route: Route | undefined;
  readonly shown: readonly View[];
  readonly chosen: string | null;
  readonly hovered: string | null;
  readonly chosenView: View;
  readonly hoverView: View;
  /** px of a line of weight 1. */
  readonly weight: number;
  onBoard(view: View, place: ViewPoint): ScreenPoint;
}

/** px at weight 1: how far the two directions that make the angle are drawn, and where the arc between them runs. */
const LEG = 64;
const ARC = 50;
const ARC_STEPS = 12;
/** A shaft of which a view shows a smaller share than this is seen nearly end-on and shows no angle. */
const SEEN = 0.08;

/** A direction of the car as a view shows it: its angle on the board, and how much of it the view shows. */
function seenAlong({ onBoard }: ShaftPictureSource, view: View, at: Point, way: Point) {
  const [a, b] = [at, [at[0] + way[0], at[1] + way[1], at[2] + way[2]] as Point].map((point) =>
    onBoard(view, project(view, point)),
  ) as [ScreenPoint, ScreenPoint];
  const [origin, right] = [onBoard(view, [0, 0]), onBoard(view, [1, 0])];
  const scale = Math.hypot(right[0] - origin[0], right[1] - origin[1]);
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return { angle: Math.atan2(b[1] - a[1], b[0] - a[0]), share: length / scale };
}

/** The shaft before a joint drawn on beyond it, the one after, and the arc between: the angle as this view shows it. */
function angleLines(
  source: ShaftPictureSource,
  { joints, directions }: Route,
  view: View,
  joint: number,
  ink: OverlayInk,
): OverlayLine[] {
  const { weight } = source;
  const centre = joints[joint]?.centre as Point;
  const before = seenAlong(source, view, centre, directions[joint] as Point);
  const after = seenAlong(source, view, centre, directions[joint + 1] as Point);
  if (before.share < SEEN || after.share < SEEN) return [];
  const [x, y] = source.onBoard(view, project(view, centre));
  const at = (angle: number, px: number): ScreenPoint => [
    x + px * weight * Math.cos(angle),
    y + px * weight * Math.sin(angle),
  ];
  // The shorter way round from one to the other.
  const turn = Math.atan2(Math.sin(after.angle - before.angle), Math.cos(after.angle - before.angle));
  const arc: number[] = [];
  for (let i = 0; i <= ARC_STEPS; i += 1) arc.push(...at(before.angle + (turn * i) / ARC_STEPS, ARC));
  return [
    { points: [x, y, ...at(before.angle, LEG)], ink: ink === 'allowed' ? ink : 'guide' },
    { points: arc, ink: ink === 'allowed' ? 'gap' : ink },
  ];
}

const degrees = (radians: number) => formatDegrees(toDegrees(radians), 1);

/**
 * A joint past its limit has a cross in every view and its angle beside it; the chosen and the hovered one show their
 * angle as it is in the view, with the true one in words beside what that view's protractor reads.
 */
export function shaftPicture(source: ShaftPictureSource): ShaftPicture {
  const { route, shown } = source;
  const lines: OverlayLine[] = [];
  const marks: OverlayMark[] = [];
  const notes: Note[] = [];
  if (!route) return { lines, marks, notes };
  const lit = new Map<number, View>();
  for (const [id, view] of [
    [source.hovered, source.hoverView],
    [source.chosen, source.chosenView],
  ] as const) {
    const joint = id === null ? undefined : jointOfPoint(id);
    if (joint !== undefined && route.joints[joint])
      lit.set(joint, shown.includes(view) ? view : (shown[0] ?? view));
  }
  for (const [joint, { centre, angle, limit, apparent }] of route.joints.entries()) {
    const over = angle > limit;
    const ink: OverlayInk = over ? 'allowed' : 'steel';
    if (over)
      for (const view of shown) {
        const [x, y] = source.onBoard(view, project(view, centre));
        marks.push({ x, y, kind: 'stop' });
      }
    const view = lit.get(joint) ?? (over ? shown[0] : undefined);
    if (!view) continue;
    for (const each of lit.has(joint) ? shown : [view])
      lines.push(...angleLines(source, route, each, joint, ink));
    const [x, y] = source.onBoard(view, project(view, centre));
    const seen = apparent[view];
    notes.push({
      id: `angle of joint ${joint} ${view}`,
      view,
      x,
      y,
      clear: 13,
      toward: 50,
      lines: [
        {
          text: over
            ? `${degrees(angle)}, limit ${formatDegrees(toDegrees(limit), 0)}`
            : `${degrees(angle)} true`,
          ink: over ? 'gap' : ink,
          strong: true,
        },
        ...(lit.has(joint)
          ? [
              {
                text: seen === undefined ? 'seen end-on in this view' : `${degrees(seen)} in this view`,
                ink: 'soft' as const,
                strong: false,
              },
            ]
          : []),
      ],
    });
  }
  return { lines, marks, notes };
}

import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
import { ISOMETRIC, type Turn } from '../../../shared-math/pictorial/index.ts';
import type { Radians } from '../../../shared-math/units/index.ts';
import type { PrintJob } from '../pages/job.ts';

/** What can be drawn: a view to scale, all three as on a sheet, the points and links in space, or curves. */
export const DRAWN_VIEWS = [
  'side',
  'top',
  'front',
  'views',
  'pictorial',
  'templates',
  '3d',
  'curves',
  'steer',
  'toe',
  'turn',
] as const;
export type DrawnView = (typeof DRAWN_VIEWS)[number];

export const DRAWING_FORMATS = ['dxf', 'svg', 'png'] as const;
export type DrawingFormat = (typeof DRAWING_FORMATS)[number];

/** What each view is called, on the drawing and in messages. */
export const DRAWN_WORDS: Record<DrawnView, string> = {
  side: 'Side view',
  top: 'Top view',
  front: 'Front view',
  views: 'Side, top and front view',
  pictorial: 'Pictorial',
  templates: 'Templates for a cutting table',
  '3d': 'Points and links in space',
  curves: 'Steer, toe and turn',
  steer: 'Bump steer',
  toe: 'Total toe-in',
  turn: 'Steering sweep',
};

/** The pose that is drawn: mm, rad; the grip that the brakes use as a share of the load, absent, they are off. */
export interface DrawnPose {
  readonly heave: number;
  readonly roll: Radians;
  readonly handwheel: Radians;
  readonly braking?: number;
}

export const AT_RIDE: DrawnPose = { heave: 0, roll: 0 as Radians, handwheel: 0 as Radians };

/** Something to be drawn into a file. */
export interface DrawingJob
  extends Pick<PrintJob, 'unit' | 'fraction' | 'customer' | 'car' | 'limits' | 'rooms'> {
  readonly view: DrawnView;
  readonly format: DrawingFormat;
  readonly document: LayoutDocument;
  readonly pose: DrawnPose;
  /** From where a pictorial looks; isometric where not given. */
  readonly turn?: Turn;
  readonly signal?: AbortSignal;
}

/** From where a pictorial looks where nothing is said. */
export const USUAL_TURN: Turn = ISOMETRIC;

/** Why a drawing was not made, as one plain sentence without its full stop. Nothing was written. */
export class DrawingRefused extends Error {}

export const isAtRide = ({ pose: { heave, roll, handwheel, braking = 0 } }: Pick<DrawingJob, 'pose'>) =>
  heave === 0 && roll === 0 && handwheel === 0 && braking === 0;

export const isCurves = (view: DrawnView) =>
  view === 'curves' || view === 'steer' || view === 'toe' || view === 'turn';

/** What speaks against a view in a format; undefined if they go together. */
export function formatTrouble(view: DrawnView, format: DrawingFormat): string | undefined {
  if (view === 'templates' && format !== 'dxf') return 'templates for a cutting table are drawn as dxf only';
  if (view === '3d' && format !== 'dxf') return 'points in space are drawn as dxf only';
  if (view === 'pictorial' && format === 'dxf')
    return 'a pictorial is drawn as svg or png, not as dxf: 3d holds the points in space';
  if (isCurves(view) && format === 'dxf') return 'curves are drawn as svg or png, not as dxf';
  return undefined;
}

/** The views that can show the room that parts need. */
const VIEWS_WITH_ROOMS: readonly DrawnView[] = ['side', 'top', 'front', 'views'];

/** What speaks against rooms in a view; undefined if it can show them, or if none were asked for. */
export function roomsTrouble(view: DrawnView, rooms: readonly unknown[] = []): string | undefined {
  if (rooms.length === 0 || VIEWS_WITH_ROOMS.includes(view)) return undefined;
  return `the room that parts need is drawn in ${VIEWS_WITH_ROOMS.slice(0, -1).join(', ')} and ${VIEWS_WITH_ROOMS.at(-1)} alone`;
}

/** What speaks against a pose; undefined if it can be asked for. */
export function poseTrouble(
  view: DrawnView,
  { heave, roll, handwheel, braking = 0 }: DrawnPose,
): string | undefined {
  if (view === 'templates' && !isAtRide({ pose: { heave, roll, handwheel, braking } }))
    return 'templates are of the car at ride height, so they take no pose';
  if (!isCurves(view) || (heave === 0 && roll === 0 && handwheel === 0 && braking === 0)) return undefined;
  return 'curves hold the whole travel and turn, so they take no pose';
}

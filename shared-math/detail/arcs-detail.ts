import { arcsAt, ballPath, type HeldTravel, judgedPlane, linkArc } from '../aim/index.ts';
import { project, type View, type ViewPoint } from '../drawing/index.ts';
import type { FrontEnd } from '../linkage/index.ts';
import { type LengthUnit, MM_PER_INCH } from '../units/index.ts';
import { type DetailCircle, isWithin } from './circle-clip.ts';

/** The gap between path and arc at one heave. mm; places in the view's own plane. */
export interface GapTick {
  readonly heave: number;
  /** In space, along the drag link: positive where the link is too short. The view may show it shorter. */
  readonly gap: number;
  readonly asked: ViewPoint;
  readonly allowed: ViewPoint;
  /** Whether both its ends lie in the detail's circle. */
  readonly within: boolean;
}

/** What decides bump steer, drawn large: path and arc of the steering-arm ball, and the gap between them over the travel. */
export interface ArcsDetail {
  readonly view: View;
  /** Round the steering-arm ball as drawn. */
  readonly circle: DetailCircle;
  /** Over the travel, droop first; empty where the axle has no pose. Places in the view's own plane, mm. */
  readonly asked: readonly ViewPoint[];
  readonly allowed: readonly ViewPoint[];
  /** By heave, droop first: ends of the travel, ride height and round steps between them. */
  readonly ticks: readonly GapTick[];
}

/** The view in which the drag link's frame end is judged: side steer from the side, cross steer from ahead. */
export function judgedView(frontEnd: FrontEnd): 'side' | 'front' {
  return judgedPlane(frontEnd).kept === 1 ? 'side' : 'front';
}

/** How far the circle reaches beyond the greater travel, as a share of it: room for what is written at its ends. */
const BEYOND = 1.28;

/**
 * The radius of the circle, mm: by the travel alone, so that it stays while a point is dragged. `heave` is that of the
 * travel that is held, droop first.
 */
export function detailRadius(heave: ArrayLike<number>): number {
  return BEYOND * Math.max(-(heave[0] ?? 0), heave[heave.length - 1] ?? 0);
}

/** mm between ticks, by the reader's unit, and how far the travel may reach each way before every other one is left out. */
const STEPS: Record<LengthUnit, { readonly step: number; readonly most: number }> = {
  in: { step: MM_PER_INCH, most: 4.5 * MM_PER_INCH },
  mm: { step: 25, most: 110 },
};
/** Share of a step that a round tick keeps off the end of the travel, which has a tick of its own. */
const OFF_END = 0.4;

/** The heaves at which the gap is ticked: the ends of the travel, ride height, and round steps of the unit. mm, ascending. */
export function tickHeaves(droop: number, bump: number, unit: LengthUnit): number[] {
  const { step: fine, most } = STEPS[unit];
  const step = Math.max(droop, bump) > most ? 2 * fine : fine;
  const round: number[] = [];
  for (let i = Math.ceil(-droop / step); i * step <= bump; i += 1) {
    const heave = i * step + 0;
    const offEnds = heave + droop > OFF_END * step && bump - heave > OFF_END * step;
    if (heave === 0 || offEnds) round.push(heave);
  }
  return [...new Set([-droop + 0, ...round, bump])].sort((a, b) => a - b);
}

function placesOf(points: Float64Array, view: View): ViewPoint[] {
  const places: ViewPoint[] = [];
  for (let i = 0; i + 2 < points.length; i += 3)
    places.push(project(view, [points[i] as number, points[i + 1] as number, points[i + 2] as number]));
  return places;
}

/** Path and arc over a held travel as a view shows them; both empty where the axle has no pose. mm. */
export function arcPlaces(
  travel: HeldTravel,
  view: View,
): { readonly asked: ViewPoint[]; readonly allowed: ViewPoint[] } {
  if (travel.status !== 'ok') return { asked: [], allowed: [] };
  const { frontEnd, heave } = travel;
  return {
    asked: placesOf(ballPath(frontEnd, heave.length, travel).points, view),
    allowed: placesOf(linkArc(frontEnd, heave.length, travel).points, view),
  };
}

/** The gap at one heave, ready to be ticked; undefined if the axle has no pose there. */
export function gapTick(
  frontEnd: FrontEnd,
  { view, circle }: Pick<ArcsDetail, 'view' | 'circle'>,
  heave: number,
): GapTick | undefined {
  const at = arcsAt(frontEnd, heave);
  if (!at) return undefined;
  const [asked, allowed] = [project(view, at.asked), project(view, at.allowed)];
  return {
    heave,
    gap: at.gap,
    asked,
    allowed,
    within: isWithin(circle, asked) && isWithin(circle, allowed),
  };
}

/**
 * The detail of the arcs of a held travel, in the view in which they are judged. Pure.
 * Frame:    the view's own plane. Units: mm. Shapes: 2 lines of as many places as the travel has heaves; a tick for each
 *           of `tickHeaves`, none where there is no pose.
 * Source:   path, arc and gap as in `arcsAt`, own derivation; the manner of a detail: ISO 128-3:2020, from memory.
 * Checked:  tests/unit/detail/arcs-detail.test.ts (the gap beside an independent solution of the raw link equations).
 */
export function arcsDetail(travel: HeldTravel, unit: LengthUnit): ArcsDetail {
  const { frontEnd, heave } = travel;
  const view = judgedView(frontEnd);
  const circle: DetailCircle = {
    centre: project(view, travel.ball),
    radius: detailRadius(heave),
  };
  const heaves =
    travel.status === 'ok' ? tickHeaves(-(heave[0] ?? 0), heave[heave.length - 1] ?? 0, unit) : [];
  return {
    view,
    circle,
    ...arcPlaces(travel, view),
    ticks: heaves.flatMap((each) => gapTick(frontEnd, { view, circle }, each) ?? []),
  };
}

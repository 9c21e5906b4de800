import {
  type AimOutcome,
  aimAtPlane,
  type HeldTravel,
  judgedPlane,
  pathGap,
  type ZeroSlopeLine,
  zeroSlopeHeight,
  zeroSlopeLine,
} from '../../../../shared-math/aim/index.ts';
import { arcPlaces, judgedView } from '../../../../shared-math/detail/index.ts';
import { project, type View, type ViewPoint } from '../../../../shared-math/drawing/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import type { FrontEnd } from '../../../../shared-math/linkage/index.ts';

/** The two arcs that decide bump steer, in the view where they are judged; places in that view's own plane, mm. */
export interface Arcs {
  readonly view: View;
  readonly heave: Float64Array;
  /** What the axle asks of the steering-arm ball; empty where the axle has no pose. */
  readonly asked: readonly ViewPoint[];
  /** What the drag link allows it. */
  readonly allowed: readonly ViewPoint[];
  /** Where the pitman ball would best be in its own plane. */
  readonly aim: { readonly at: ViewPoint } | undefined;
  /** Along the zero-slope line in the pitman ball's plane: beside the steering-arm ball, and beside the aim point. */
  readonly zeroSlope: { readonly from: ViewPoint; readonly to: ViewPoint } | undefined;
}

export interface Gap {
  /** mm; at ride height there is none, so there it is reported for the end of the travel where it is widest. */
  readonly heave: number;
  /** Whether that is another heave than the present one. */
  readonly elsewhere: boolean;
  /** Without a sign, mm. */
  readonly size: number;
  readonly asked: ViewPoint;
  readonly allowed: ViewPoint;
}

/** The place of the zero-slope line straight above or below a point. */
function on(line: ZeroSlopeLine, [x, y]: Point): Point {
  return [x, y, zeroSlopeHeight(line, line.plane.axis === 1 ? x : y)];
}

/** The arcs of a front end. Side steer is judged from the side, cross steer from the front. */
export function arcsOf(travel: HeldTravel, aim: AimOutcome): Arcs {
  const { frontEnd } = travel;
  const { kept } = judgedPlane(frontEnd);
  const view = judgedView(frontEnd);
  const { pitmanBall } = frontEnd.layout.steering.box;
  const at: Point | undefined = aim.ok ? aimAtPlane(aim.value, kept, pitmanBall[kept]) : undefined;
  const zero = at ? zeroSlopeLine(frontEnd) : undefined;
  return {
    view,
    heave: travel.heave,
    ...arcPlaces(travel, view),
    aim: at ? { at: project(view, at) } : undefined,
    zeroSlope:
      zero && at ? { from: project(view, zero.through), to: project(view, on(zero, at)) } : undefined,
  };
}

function between(places: readonly ViewPoint[], heave: Float64Array, at: number): ViewPoint | undefined {
  for (let i = 1; i < places.length; i += 1) {
    const from = heave[i - 1] as number;
    const to = heave[i] as number;
    if (at < from || at > to) continue;
    const share = (at - from) / (to - from);
    const [a, b] = [places[i - 1] as ViewPoint, places[i] as ViewPoint];
    return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
  }
  return undefined;
}

/** The gap between the arcs at a heave; at ride height, at the end of the travel where it is wider. */
export function gapOf(frontEnd: FrontEnd, arcs: Arcs, heave: number): Gap | undefined {
  const size = (at: number) => Math.abs(pathGap(frontEnd, at) ?? 0);
  const ends = [arcs.heave.at(0) ?? 0, arcs.heave.at(-1) ?? 0] as const;
  const heaveShown = heave !== 0 ? heave : size(ends[0]) > size(ends[1]) ? ends[0] : ends[1];
  const asked = between(arcs.asked, arcs.heave, heaveShown);
  const allowed = between(arcs.allowed, arcs.heave, heaveShown);
  if (!asked || !allowed) return undefined;
  return { heave: heaveShown, elsewhere: heaveShown !== heave, size: size(heaveShown), asked, allowed };
}

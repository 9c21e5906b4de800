import { judgedPlane } from '../../../shared-math/aim/index.ts';
import { project, type View, type ViewPoint } from '../../../shared-math/drawing/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { transmissionAngles } from '../../../shared-math/joints/index.ts';
import type { Carrier } from '../../../shared-math/layout/index.ts';
import { carryPoint, type FrontEnd, type FrontEndState } from '../../../shared-math/linkage/index.ts';
import { ackermannCar, ackermannOf } from '../../../shared-math/sweep/index.ts';
import { formatDegrees, type Radians, toDegrees, toRadians } from '../../../shared-math/units/index.ts';
import type { ScreenPoint } from '../../board/camera.ts';
import type { OverlayInk, OverlayLine } from '../../board/overlay.ts';
import type { Note } from '../../board/overlay-picture.ts';

/** What a pose of the turn says of itself on the board. */
export interface TurnPicture {
  readonly lines: readonly OverlayLine[];
  readonly notes: readonly Note[];
}

export interface TurnPictureSource {
  readonly frontEnd: FrontEnd;
  readonly state: FrontEndState;
  readonly shown: readonly View[];
  /** The angle between drag link and arm below which its dead centre is near, degrees. */
  readonly transmissionLeast: number;
  onBoard(view: View, place: ViewPoint): ScreenPoint;
}

/** rad. Wheels straighter than this have no turning centre to speak of. */
const STRAIGHT: Radians = toRadians(2);

const at = new Float64Array(3);

function carried({ frontEnd, state }: TurnPictureSource, carrier: Carrier, point: Point): Point {
  carryPoint(frontEnd, state, carrier, point, at);
  return [at[0] as number, at[1] as number, at[2] as number];
}

/** From a wheel square to its heading, toward the side that is turned to (1 left, -1 right), as seen from above. */
function normal(from: Point, steer: Radians, side: number, length: number): Point {
  return [from[0] - side * length * Math.sin(steer), from[1] + side * length * Math.cos(steer), from[2]];
}

/** How far the normals are drawn on beyond the inner wheel, as a share of the track. */
const BEYOND = 0.22;

/** The wheels' normals, and where the outer one's would lie if both met on the rear axle's line. */
function normals(source: TurnPictureSource): TurnPicture {
  const { frontEnd, state } = source;
  const { layout } = frontEnd;
  if (!source.shown.includes('top') || Math.abs(state.meanSteer) < STRAIGHT) return { lines: [], notes: [] };
  const left = carried(source, 'spindle-left', layout.axle.left.wheelCentre);
  const right = carried(source, 'spindle-right', layout.axle.right.wheelCentre);
  const side = Math.sign(state.meanSteer);
  const across = left[1] - right[1];
  const [outer, outerSteer] = side > 0 ? [right, state.right.steer] : [left, state.left.steer];
  const [inner, innerSteer] = side > 0 ? [left, state.left.steer] : [right, state.right.steer];
  const { idealOuter, error } = ackermannOf(state.left.steer, state.right.steer, ackermannCar(layout));
  const long = (1 + BEYOND) * across;
  const line = (from: Point, steer: Radians, length: number, ink: OverlayInk): OverlayLine => {
    const ends = [from, normal(from, steer, side, length)].map((end) =>
      source.onBoard('top', project('top', end)),
    );
    return { points: ends.flat(), ink };
  };
  const [x, y] = source.onBoard('top', project('top', normal(outer, idealOuter, side, long)));
  const size = formatDegrees(Math.abs(toDegrees(error)), 1);
  const words =
    size === formatDegrees(0, 1) ? 'on its ideal' : `${size} ${error > 0 ? 'beyond' : 'short of'} ideal`;
  return {
    lines: [
      line(inner, innerSteer, BEYOND * across, 'guide'),
      line(outer, outerSteer, long, 'guide'),
      line(outer, idealOuter, long, 'aim'),
    ],
    notes: [
      {
        id: 'outer wheel',
        view: 'top',
        x,
        y,
        clear: 5,
        toward: 0,
        lines: [{ text: `outer wheel ${words}`, ink: 'aim', strong: false }],
      },
    ],
  };
}

/** How square the drag link stands to its arms: how far each is from its dead centre. */
function transmission(source: TurnPictureSource): Note[] {
  const { frontEnd, state, shown } = source;
  const { steering } = frontEnd.layout;
  const angles = transmissionAngles(frontEnd, state);
  const swing: View = judgedPlane(frontEnd).kept === 1 ? 'side' : 'front';
  const arm = `spindle-${frontEnd.driven}` as const;
  const ends = [
    ['pitman arm', swing, carried(source, 'pitman', steering.box.pitmanBall), angles.pitman, 50],
    ['steering arm', 'top', carried(source, arm, steering.dragLinkBall), angles.steeringArm, 140],
  ] as const;
  return ends.flatMap(([name, view, ball, angle, toward]) => {
    if (!shown.includes(view)) return [];
    const [x, y] = source.onBoard(view, project(view, ball));
    const degrees = toDegrees(angle);
    const near = degrees < source.transmissionLeast;
    const text = `${formatDegrees(degrees, 0)} link to ${name}${near ? ', dead centre near' : ''}`;
    return [
      {
        id: `transmission ${name}`,
        view,
        x,
        y,
        clear: 9,
        toward,
        lines: [{ text, ink: near ? ('allowed' as const) : ('steel' as const), strong: near }],
      },
    ];
  });
}

/** What is drawn over the car while its whole turn is looked at; nothing in a pose that does not solve. */
export function turnPicture(source: TurnPictureSource): TurnPicture {
  if (source.state.status !== 'ok') return { lines: [], notes: [] };
  const { lines, notes } = normals(source);
  return { lines, notes: [...transmission(source), ...notes] };
}

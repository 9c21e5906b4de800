import {
  type Box,
  type Drawing,
  joined,
  moved,
  type Sheet,
  unproject,
  type View,
  type ViewPoint,
} from '../../../shared-math/drawing/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import type { Hardpoint } from '../../../shared-math/layout/index.ts';
import {
  axesOf,
  fromOtherSide,
  ISOMETRIC,
  keptTurn,
  nearnessOf,
  onPaper,
  type PictureRoom,
  roomOfPicture,
  type Turn,
} from '../../../shared-math/pictorial/index.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { Camera, Size } from '../camera.ts';
import type { Grip, Hold } from '../gestures/index.ts';
import { HIT_RADIUS } from '../handles.ts';

/** rad that the car turns for a px that the hand goes. */
const TURN_RATE = 0.0075;
/** rad that an arrow key turns it, and with Shift. */
const TURN_STEP = Math.PI / 36;
const TURN_FAR = Math.PI / 12;
/** Milliseconds in which it turns back square. */
const BACK = 240;
/** px: of points that are this much nearer to the pointer than another none is chosen before it for standing in front. */
const SAME_SPOT = 4;
/** Share of the gap between front and top view that it may take beside its quarter. */
const INTO_GAP = 0.5;
/** Share of it that is left free at its edges. */
const AIR = 0.03;

export type TurnArrow = 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown';
const ARROWS: Record<TurnArrow, readonly [azimuth: number, elevation: number]> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** What something covers, mm: in the top view's own plane, and on paper in the square turn, from where the car's origin is seen. */
export interface BesidePicture {
  readonly plan: Box;
  readonly square: Box;
}

/** What it has to know of the sheet it stands on. */
export interface SheetAround {
  readonly size: Size;
  readonly weight: number;
  readonly camera: Camera;
  readonly sheet: Sheet;
  readonly boxes: Record<View, Box>;
  readonly drawing: Drawing;
}

/** A point as the picture shows it: px of the board, and mm toward the one who looks. */
export interface SpotInSpace {
  readonly point: Hardpoint;
  readonly x: number;
  readonly y: number;
  readonly near: number;
}

/** The pictorial in the free quarter of the sheet, or alone on the board: from where the car is looked at, and what hands do. */
export class PictorialView {
  readonly #openLayout: OpenLayout;
  readonly #view: SheetAround;
  #frame = 0;

  /** Undefined while it is the square one, which goes with the layout. */
  #turned: Turn | undefined = $state.raw();
  /** Whether the pointer is over it. */
  over = $state(false);
  /** Whether a hand holds the car to turn it. */
  inHand = $state(false);
  /** Whether a point was taken hold of, which turns the car instead. */
  heldPoint = $state(false);

  /** Isometric, from the side on which the steering box stands: there is most to be seen of what is laid out. */
  square: Turn = $derived.by(() =>
    this.#openLayout.layout.steering.box.sectorCentre[1] < 0 ? fromOtherSide(ISOMETRIC) : ISOMETRIC,
  );
  turn: Turn = $derived(this.#turned ?? this.square);
  axes = $derived(axesOf(this.turn));
  isSquare = $derived(this.#turned === undefined);
  shown = $derived.by(() => this.#openLayout.enlarged === null || this.#openLayout.enlarged === 'pictorial');
  /** The room that the car took when the sheet was arranged: a dragged point leaves the picture where it is. */
  #room: PictureRoom = $state.raw({
    centre: [0, 0, 0],
    radius: 1,
    box: { left: -1, top: -1, right: 1, bottom: 1 },
  });
  /** What shows besides the car and has room too. */
  beside: BesidePicture | undefined = $state.raw();
  #covered: PictureRoom = $derived.by(() => {
    const { centre, radius, box } = this.#room;
    if (!this.beside) return this.#room;
    const { plan, square } = this.beside;
    const [x, y] = onPaper(axesOf(this.square), centre);
    const corners = [plan.left, plan.right].flatMap((right) =>
      [plan.top, plan.bottom].map((down) => unproject('top', [right, down], centre)),
    );
    return {
      centre,
      radius: Math.max(
        radius,
        ...corners.map(([ahead, left]) => Math.hypot(ahead - centre[0], left - centre[1])),
      ),
      box: joined(box, moved(square, [-x, -y])),
    };
  });
  /** The free quarter, mm of the sheet: above the front view, left of the top view. */
  box: Box = $derived.by(() => {
    const { boxes, sheet } = this.#view;
    const front = moved(boxes.front, sheet.origin.front);
    const top = moved(boxes.top, sheet.origin.top);
    const side = moved(boxes.side, sheet.origin.side);
    const gap = Math.min(top.left, side.left) - front.right;
    return { left: front.left, right: front.right + INTO_GAP * gap, top: top.top, bottom: top.bottom };
  });
  /** mm of the sheet for a mm of the picture: the same in every turn, so that nothing breathes while it is turned. */
  scale = $derived.by(() => {
    const { left, top, right, bottom } = this.box;
    const { radius, box } = this.#covered;
    const across = Math.max(2 * radius, box.right - box.left);
    return (1 - AIR) * Math.min((right - left) / across, (bottom - top) / (box.bottom - box.top));
  });
  /** What the car covers while it is square, mm of the sheet, in the middle of its quarter: fitted when it fills the board. */
  fittedBox: Box = $derived.by(() => {
    const { left, top, right, bottom } = this.box;
    const { box } = this.#covered;
    const [x, y] = [(left + right) / 2, (top + bottom) / 2];
    const across = (this.scale * (box.right - box.left)) / 2;
    const down = (this.scale * (box.bottom - box.top)) / 2;
    return { left: x - across, right: x + across, top: y - down, bottom: y + down };
  });
  /** Where the car's origin is seen, mm of the sheet. */
  origin: ViewPoint = $derived.by(() => {
    const { centre, box } = this.#covered;
    const [x, y] = onPaper(this.axes, centre);
    return [
      this.fittedBox.left - this.scale * (box.left + x),
      this.fittedBox.top - this.scale * (box.top + y),
    ];
  });

  constructor(openLayout: OpenLayout, view: SheetAround) {
    this.#openLayout = openLayout;
    this.#view = view;
  }

  /** Takes the room that the car needs as it is drawn now. */
  measure(): void {
    this.#room = roomOfPicture(this.#view.drawing, this.square);
  }

  /** What of the board it has: its quarter, or all of the board; px. */
  get area(): {
    readonly left: number;
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
  } {
    const { size, camera } = this.#view;
    if (this.#openLayout.enlarged === 'pictorial')
      return { left: 0, top: 0, right: size.width, bottom: size.height };
    const { left, top, right, bottom } = this.box;
    // Whole px: a canvas that lies between them is blurred.
    return {
      left: Math.max(0, Math.floor(left * camera.scale + camera.x)),
      top: Math.max(0, Math.floor(top * camera.scale + camera.y)),
      right: Math.min(size.width, Math.ceil(right * camera.scale + camera.x)),
      bottom: Math.min(size.height, Math.ceil(bottom * camera.scale + camera.y)),
    };
  }

  contains(x: number, y: number): boolean {
    if (!this.shown) return false;
    const { left, top, right, bottom } = this.area;
    return x >= left && x <= right && y >= top && y <= bottom;
  }

  // Points ---------------------------------------------------------------------------------------------------

  /** px of the board at which it shows a point of the car. */
  spotOf(at: Point): readonly [x: number, y: number] {
    const { camera } = this.#view;
    const [x, y] = onPaper(this.axes, at);
    return [
      (this.origin[0] + this.scale * x) * camera.scale + camera.x,
      (this.origin[1] + this.scale * y) * camera.scale + camera.y,
    ];
  }

  spots(points: readonly Hardpoint[] = this.#openLayout.points): SpotInSpace[] {
    const at = new Float64Array(3);
    return points.map((point) => {
      this.#openLayout.carPose.carryPoint(point.carrier, point.at, at);
      const carried: Point = [at[0] as number, at[1] as number, at[2] as number];
      const [x, y] = this.spotOf(carried);
      return { point, x, y, near: nearnessOf(this.axes, carried) };
    });
  }

  /** The point under a place: the nearest one to it, and of those on one spot the one in front. */
  pointAt(x: number, y: number): Hardpoint | undefined {
    if (!this.contains(x, y)) return undefined;
    const reach = HIT_RADIUS * this.#view.weight;
    const within = this.spots()
      .map((spot) => ({ ...spot, away: Math.hypot(spot.x - x, spot.y - y) }))
      .filter(({ away }) => away <= reach);
    const least = Math.min(...within.map(({ away }) => away));
    return within
      .filter(({ away }) => away <= least + SAME_SPOT * this.#view.weight)
      .reduce<SpotInSpace | undefined>(
        (best, spot) => (best && best.near >= spot.near ? best : spot),
        undefined,
      )?.point;
  }

  // Turning --------------------------------------------------------------------------------------------------

  /** What a hand takes hold of that presses on it: the car, which turns. */
  readonly hold: Hold = {
    take: (): Grip => {
      cancelAnimationFrame(this.#frame);
      const before = this.#turned;
      const from = this.turn;
      this.inHand = true;
      return {
        moveTo: (right, down) => {
          this.#turned = keptTurn({
            azimuth: from.azimuth - TURN_RATE * right,
            elevation: from.elevation + TURN_RATE * down,
          });
        },
        putDown: () => {
          this.inHand = false;
          this.heldPoint = false;
        },
        giveBack: () => {
          this.inHand = false;
          this.heldPoint = false;
          this.#turned = before;
        },
      };
    },
  };

  /** One step along an arrow key. */
  turnBy(arrow: TurnArrow, far: boolean): void {
    cancelAnimationFrame(this.#frame);
    const step = far ? TURN_FAR : TURN_STEP;
    const [azimuth, elevation] = ARROWS[arrow];
    this.#turned = keptTurn({
      azimuth: this.turn.azimuth + step * azimuth,
      elevation: this.turn.elevation + step * elevation,
    });
  }

  /** Back to the axonometry of the standard, by the shorter way around. */
  squareUp(): void {
    cancelAnimationFrame(this.#frame);
    if (!this.#turned) return;
    if (window.matchMedia('(prefers-reduced-motion: reduce)').matches) {
      this.#turned = undefined;
      return;
    }
    const { azimuth, elevation } = this.#turned;
    const to = this.square;
    const around = keptTurn({ azimuth: to.azimuth - azimuth, elevation: 0 }).azimuth;
    let begun: number | undefined;
    const step = (now: number) => {
      begun ??= now;
      const share = Math.min(1, (now - begun) / BACK);
      const eased = 1 - (1 - share) ** 3;
      this.#turned =
        share < 1
          ? keptTurn({
              azimuth: azimuth + around * eased,
              elevation: elevation + (to.elevation - elevation) * eased,
            })
          : undefined;
      if (share < 1) this.#frame = requestAnimationFrame(step);
    };
    this.#frame = requestAnimationFrame(step);
  }

  stop(): void {
    cancelAnimationFrame(this.#frame);
  }
}

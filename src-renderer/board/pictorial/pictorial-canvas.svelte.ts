import { type Drawing, drawLayout, placeInPose, roomFor } from '../../../shared-math/drawing/index.ts';
import { bodyOfPart } from '../../../shared-math/layout/index.ts';
import type { FrontEnd, FrontEndState } from '../../../shared-math/linkage/index.ts';
import { Pictorial, type SpaceCurve } from '../../../shared-math/pictorial/index.ts';
import { whenever } from '../../controls/whenever.svelte.ts';
import { type FramePose, LEVEL, placeFrame } from '../../document/frame-pose.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { pageGround } from '../../look/ground.svelte.ts';
import { onceTypeCame } from '../../look/type-came.ts';
import type { BoardView } from '../board-view.svelte.ts';
import type { Contribution, CurveInSpace, OutlineInTurn } from '../contributor.ts';
import { isSteering } from '../handles.ts';
import { type Palette, readPalette } from '../inks.ts';
import { lineInks } from '../overlay-painter.ts';
import { type CurveInk, paintGhost, paintOutline, paintStrokes } from './paint-strokes.ts';
import {
  type GhostInk,
  otherGhost,
  type PictorialInks,
  pictorialInks,
  proposedGhost,
  rideGhost,
} from './pictorial-inks.ts';
import type { SpotInSpace } from './pictorial-view.svelte.ts';
import { hasRideGhost, RideGhost } from './ride-ghost.ts';

/** px of line and gap of a proposed car. */
const PROPOSED_DASH = [6, 3.5];
/** px that an outline may be off a true round one. */
const ROUND_OFF = 0.12;
/** px at weight 1: a chosen point and one under the pointer, the ring round it, and the points at rest. */
const SPOT = { lit: 4.4, ring: 9.5, rest: 1.9 } as const;
/** px at weight 1 of the word at the front end of the ground, and of a point's number. */
const WORD = 10.5;
const NUMBER = { size: 11.5, off: 9 } as const;

/** px per mm at which lines are as heavy as in the other views; smaller they are finer, so that small parts stay open. */
const FULL_LINES = 0.22;
const lineShare = (scale: number) => Math.min(1, Math.max(0.62, scale / FULL_LINES));

/** Another car in the picture, drawn by outlines. */
interface Ghost {
  readonly frontEnd: FrontEnd;
  readonly drawing: Drawing;
  readonly placed: Float64Array;
  readonly pictorial: Pictorial;
}

/** The cars drawn beside the open one, kept while they are the same. */
class Ghosts {
  readonly #kept = new Map<string, Ghost>();

  place(id: string, frontEnd: FrontEnd, state: FrontEndState, framePose: FramePose): Ghost {
    let ghost = this.#kept.get(id);
    if (!ghost || ghost.frontEnd !== frontEnd) {
      const drawing = drawLayout(frontEnd.layout);
      ghost = { frontEnd, drawing, placed: roomFor(drawing), pictorial: new Pictorial(drawing) };
      this.#kept.set(id, ghost);
    }
    placeInPose(ghost.drawing, frontEnd, state, ghost.placed);
    placeFrame(ghost.placed, framePose);
    return ghost;
  }

  keepOnly(ids: ReadonlySet<string>): void {
    for (const id of this.#kept.keys()) if (!ids.has(id)) this.#kept.delete(id);
  }
}

interface ShownGhost {
  readonly ghost: Ghost;
  readonly ink: (palette: Palette) => GhostInk;
  readonly dash: readonly number[];
}

const curveInk = (palette: Palette, { kind }: CurveInSpace): CurveInk => ({
  colour: kind === 'asked' ? palette.ink : palette.stop,
  width: 1.8,
  dash: kind === 'asked' ? [] : [5, 3.5],
  halo: palette.paper,
});

/**
 * An attachment that keeps the pictorial on a canvas of its own, which lies over the board's quarter. Whatever it shows marks
 * it; it is painted once in the next frame. `under` is the canvas that lies under it.
 */
export function pictorialCanvas(
  openLayout: OpenLayout,
  view: BoardView,
  contributions: readonly Contribution[],
  under: () => HTMLCanvasElement | undefined,
) {
  return (canvas: HTMLCanvasElement) => {
    const found = canvas.getContext('2d');
    if (!found) return undefined;
    const context: CanvasRenderingContext2D = found;
    const own = view.pictorial;
    const ghosts = new Ghosts();
    let pictorial: Pictorial | undefined;
    let palette = readPalette(canvas);
    let inks: PictorialInks = pictorialInks(palette);
    let paleInks = rideGhost(palette);
    const pale = under();
    const atRide = pale && new RideGhost(pale, () => mark());
    let moved = false;
    let frame = 0;
    let curves: readonly CurveInSpace[] = [];
    let inSpace: readonly SpaceCurve[] = [];
    let stressed: ReadonlySet<string> = new Set();
    let others: readonly ShownGhost[] = [];
    let outlines: readonly OutlineInTurn[] = [];
    let outlineInks = lineInks(palette);

    const mark = () => {
      if (frame === 0) frame = requestAnimationFrame(paint);
    };

    function paint(): void {
      frame = 0;
      const { left, top, right, bottom } = own.area;
      const ratio = window.devicePixelRatio || 1;
      const width = Math.max(1, Math.ceil((right - left) * ratio));
      const height = Math.max(1, Math.ceil((bottom - top) * ratio));
      if (canvas.width !== width || canvas.height !== height) {
        canvas.width = width;
        canvas.height = height;
        canvas.style.width = `${width / ratio}px`;
        canvas.style.height = `${height / ratio}px`;
      }
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.clearRect(0, 0, width, height);
      if (!own.shown || right <= left || bottom <= top) return;
      const { drawing, placed } = view.standing;
      if (!pictorial?.take(drawing)) pictorial = new Pictorial(drawing);
      const scale = own.scale * view.camera.scale;
      const px = (palette.weight * lineShare(scale / palette.weight)) / scale;
      const off = ROUND_OFF / scale;
      const [x, y] = own.spotOf([0, 0, 0]);
      if (moved && !own.inHand)
        atRide?.show(
          drawing,
          {
            turn: own.turn,
            width,
            height,
            x: (x - left) * ratio,
            y: (y - top) * ratio,
            scale: scale * ratio,
            px,
            off,
            inks: paleInks,
          },
          ratio,
        );
      else atRide?.hide();
      context.setTransform(scale * ratio, 0, 0, scale * ratio, (x - left) * ratio, (y - top) * ratio);
      const strokes = pictorial.draw(placed, own.turn, inSpace, off);
      paintStrokes(
        context,
        strokes,
        drawing,
        inks,
        px,
        stressed,
        curves.map((each) => curveInk(palette, each)),
      );
      for (const { ghost, ink, dash } of others)
        paintGhost(
          context,
          ghost.pictorial.draw(ghost.placed, own.turn, [], off),
          ghost,
          view.standing,
          ink(palette),
          px,
          dash,
        );
      const { azimuth, elevation } = own.turn;
      for (const { turn, points, ink } of outlines)
        if (turn.azimuth === azimuth && turn.elevation === elevation)
          paintOutline(context, points, outlineInks[ink], px);
      context.setTransform(ratio, 0, 0, ratio, -left * ratio, -top * ratio);
      paintFrontWord(pictorial.front, scale, x, y);
      paintSpots();
    }

    /** FRONT, beyond the tip of the arrow on the ground and off its line. */
    function paintFrontWord(front: Pictorial['front'], scale: number, x: number, y: number): void {
      const length = Math.hypot(front.wayRight, front.wayDown);
      // Looked at from straight ahead the arrow has no length, and its word would stand on the car.
      if (length < 0.25) return;
      const [right, down] = [front.wayRight / length, front.wayDown / length];
      context.font = `600 ${WORD * palette.weight}px ${palette.heading}`;
      context.fillStyle = palette.inkSoft;
      context.textBaseline = 'middle';
      context.textAlign = right < -0.3 ? 'right' : right > 0.3 ? 'left' : 'center';
      const clear = 4 * palette.weight;
      written(
        'FRONT',
        x + scale * front.right + clear * right,
        y + scale * front.down + clear * down + 0.4 * WORD * palette.weight * down,
      );
    }

    /** A word with a rim of paper, so that no line crosses its letters. */
    function written(text: string, x: number, y: number): void {
      context.lineJoin = 'round';
      context.strokeStyle = palette.paper;
      context.lineWidth = 4 * palette.weight;
      context.strokeText(text, x, y);
      context.fillText(text, x, y);
    }

    function paintSpots(): void {
      const { selection, hover, points } = openLayout;
      const lit: SpotInSpace[] = [];
      const wanted = own.over ? points : points.filter(({ id }) => id === selection || id === hover);
      for (const spot of own.spots(wanted)) {
        if (spot.point.id === selection || spot.point.id === hover) lit.push(spot);
        else if (own.over) paintRestingSpot(spot);
      }
      for (const spot of lit) paintLitSpot(spot, spot.point.id === selection);
    }

    function paintRestingSpot({ point, x, y }: SpotInSpace): void {
      context.beginPath();
      context.arc(x, y, SPOT.rest * palette.weight, 0, 2 * Math.PI);
      context.fillStyle = isSteering(point) ? palette.steel : palette.ink;
      context.fill();
    }

    function paintLitSpot({ point, x, y }: SpotInSpace, chosen: boolean): void {
      const { weight, steel, panel } = palette;
      context.beginPath();
      context.arc(x, y, SPOT.lit * weight, 0, 2 * Math.PI);
      context.fillStyle = chosen || !openLayout.guessed.has(point.id) ? steel : panel;
      context.fill();
      context.strokeStyle = steel;
      context.lineWidth = 1.6 * weight;
      context.stroke();
      context.beginPath();
      context.arc(x, y, SPOT.ring * weight, 0, 2 * Math.PI);
      context.lineWidth = (chosen ? 1.6 : 1.1) * weight;
      context.stroke();
      const number = openLayout.numbers.get(point.id);
      if (number === undefined) return;
      context.font = `600 ${NUMBER.size * weight}px ${palette.text}`;
      context.fillStyle = steel;
      context.textAlign = 'left';
      context.textBaseline = 'middle';
      written(String(number), x + NUMBER.off * weight, y - NUMBER.off * weight);
    }

    const ink = () => {
      palette = readPalette(canvas);
      inks = pictorialInks(palette);
      paleInks = rideGhost(palette);
      outlineInks = lineInks(palette);
      mark();
    };
    const observer = new ResizeObserver(ink);
    observer.observe(canvas.parentElement ?? canvas);
    whenever(() => pageGround.night, ink);
    const stopWaiting = onceTypeCame(mark);

    // All that the picture is made of is read here, so that a change of any of it marks the canvas.
    $effect(() => {
      void [
        view.standing,
        own.turn,
        own.origin,
        own.scale,
        own.shown,
        own.over,
        own.inHand,
        view.camera,
        view.size,
      ];
      void [openLayout.selection, openLayout.hover, openLayout.numbers, openLayout.guessed];
      mark();
    });
    $effect(() => {
      void view.weight;
      ink();
    });
    $effect(() => {
      moved = hasRideGhost(openLayout, contributions);
      mark();
    });
    $effect(() => {
      curves = contributions.flatMap((each) => each.curvesInSpace?.() ?? []);
      inSpace = curves.map(({ points }, i) => ({ id: String(i), points }));
      mark();
    });
    $effect(() => {
      outlines = contributions.flatMap((each) => each.outlinesInTurn?.() ?? []);
      mark();
    });
    // Which parts they are goes by their names, and these are the same for as long as the structure is.
    whenever(
      () => [view.structure, openLayout.selection, openLayout.hover, openLayout.chosenBody?.id] as const,
      ([, selection, hover, body]) => {
        stressed = stressedParts(view.drawing, selection, hover, body);
        mark();
      },
    );
    $effect(() => {
      const answers = contributions.map((each) => each.otherCars?.());
      const variants = answers.findLast((answer) => answer !== undefined) ?? [];
      const proposed = contributions.map((each) => each.proposed?.()).find((answer) => answer !== undefined);
      const shown: ShownGhost[] = variants
        .filter(({ state }) => state.status === 'ok')
        .map(({ id, frontEnd, state, framePose, dash, whole }) => ({
          ghost: ghosts.place(id, frontEnd, state, framePose),
          ink: (of: Palette) => otherGhost(of, whole),
          dash,
        }));
      if (proposed?.state.status === 'ok')
        shown.push({
          ghost: ghosts.place('proposed', proposed.frontEnd, proposed.state, LEVEL),
          ink: (of) => proposedGhost(of, proposed.links),
          dash: PROPOSED_DASH,
        });
      ghosts.keepOnly(new Set([...variants.map(({ id }) => id), ...(proposed ? ['proposed'] : [])]));
      others = shown;
      mark();
    });

    return () => {
      stopWaiting();
      cancelAnimationFrame(frame);
      observer.disconnect();
      own.stop();
      atRide?.hide();
    };
  };
}

/** Ids of the parts whose lines are drawn heavier: those of what is chosen and hovered. */
function stressedParts(
  drawing: Drawing,
  selection: string | null,
  hover: string | null,
  chosenBody: string | undefined,
): ReadonlySet<string> {
  return new Set(
    drawing.parts
      .filter(({ id, hardpoints }) => {
        const body = bodyOfPart(id);
        return (
          hardpoints.some((each) => each === selection || each === hover) ||
          (body !== undefined && (body === chosenBody || body === hover))
        );
      })
      .map(({ id }) => id),
  );
}

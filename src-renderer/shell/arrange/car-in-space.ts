import { type Box, drawLayout, placeAtRide, type Role, roomFor } from '../../../shared-math/drawing/index.ts';
import { driverSideOf, type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import {
  fromOtherSide,
  ISOMETRIC,
  Pictorial,
  STROKE_KINDS,
  type StrokeKind,
} from '../../../shared-math/pictorial/index.ts';

/** One stroke of a small picture in space, as SVG takes it; mm of paper at full size. */
export interface SpaceStroke {
  readonly d: string;
  readonly role: Role;
  readonly kind: StrokeKind;
  /** Of a face how far it is turned from the light, in steps from 0 to `TONES` - 1. */
  readonly tone: number;
}

export interface CarInSpace {
  readonly strokes: readonly SpaceStroke[];
  /** What the car covers. */
  readonly box: Box;
}

/** Steps of light and shade, each with its class. */
export const TONES = 5;
/** mm of paper that a round outline may be off: a third of a pixel where a car is some 300 across. */
const OFF = 2;

function pathOf(places: Float64Array, from: number, to: number, closed: boolean): string {
  const steps: string[] = [];
  for (let i = from; i + 1 < to; i += 2)
    steps.push(`${Math.round(places[i] as number)} ${Math.round(places[i + 1] as number)}`);
  return steps.length < 2 ? '' : `M${steps.join('L')}${closed ? 'Z' : ''}`;
}

/** A layout at ride height in space, from ahead and the driver's side, in the order in which it is painted. */
export function carInSpace(document: LayoutDocument): CarInSpace {
  const drawing = drawLayout(resolveLayout(document));
  const placed = roomFor(drawing);
  placeAtRide(drawing, placed);
  const turn = driverSideOf(document) === 'right' ? fromOtherSide(ISOMETRIC) : ISOMETRIC;
  const { count, kinds, parts, shades, closed, from, to, opening, places } = new Pictorial(drawing).draw(
    placed,
    turn,
    [],
    OFF,
  );
  const box = { left: 0, top: 0, right: 0, bottom: 0 };
  const strokes: SpaceStroke[] = [];
  for (let i = 0; i < count; i += 1) {
    const kind = STROKE_KINDS[kinds[i] as number];
    const role = drawing.parts[parts[i] as number]?.role;
    if (!kind || !role || role === 'ground') continue;
    const [begins, ends, open] = [from[i] as number, to[i] as number, opening[i] as number];
    const rings = open >= 0 && open < ends ? [begins, open, ends] : [begins, ends];
    const d = rings
      .slice(1)
      .map((end, ring) => pathOf(places, rings[ring] as number, end, kind === 'face' || closed[i] === 1))
      .join('');
    if (d === '') continue;
    for (let at = begins; at + 1 < ends; at += 2) {
      const [x, y] = [places[at] as number, places[at + 1] as number];
      box.left = Math.min(box.left, x);
      box.right = Math.max(box.right, x);
      box.top = Math.min(box.top, y);
      box.bottom = Math.max(box.bottom, y);
    }
    const tone = Math.min(TONES - 1, Math.max(0, Math.round((shades[i] as number) * (TONES - 1))));
    strokes.push({ d, role, kind, tone });
  }
  return { strokes, box };
}

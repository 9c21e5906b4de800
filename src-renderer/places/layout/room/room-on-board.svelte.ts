import { type Box, boxOf, joined, moved, VIEWS, type View } from '../../../../shared-math/drawing/index.ts';
import type { SweptPart } from '../../../../shared-math/swept/index.ts';
import type { BoardView } from '../../../board/board-view.svelte.ts';
import { type Contribution, piece } from '../../../board/contributor.ts';
import type { OverlayInk, OverlayLine } from '../../../board/overlay.ts';
import type { BesidePicture } from '../../../board/pictorial/pictorial-view.svelte.ts';
import { whenever } from '../../../controls/whenever.svelte.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import RoomChoice from './RoomChoice.svelte';
import type { PartRoom } from './room-job.ts';
import type { RoomView } from './room-view.svelte.ts';

const INKS: Record<SweptPart, OverlayInk> = {
  tyre: 'room',
  'drag-link': 'steeringRoom',
  'tie-rod': 'steeringRoom',
};

/** mm to which what a room covers is rounded out, so that a small change leaves the sheet where it is. */
const ROUNDED_OUT = 50;

/** What rooms cover in a view's own plane, mm; undefined if there are none. */
function coveredBy(rooms: readonly PartRoom[], view: View): Box | undefined {
  const boxes = rooms.flatMap(({ outlines }) => outlines[view].map(boxOf));
  return boxes.length === 0 ? undefined : roundedOut(boxes.reduce(joined));
}

function roundedOut({ left, top, right, bottom }: Box): Box {
  const out = (value: number, way: 1 | -1) => way * Math.ceil((way * value) / ROUNDED_OUT) * ROUNDED_OUT;
  return { left: out(left, -1), top: out(top, -1), right: out(right, 1), bottom: out(bottom, 1) };
}

/** What rooms cover of the pictorial; undefined if there are none. */
function besidePicture(rooms: readonly PartRoom[]): BesidePicture | undefined {
  const plan = coveredBy(rooms, 'top');
  const boxes = rooms.flatMap(({ square }) => square ?? []);
  return plan && boxes.length > 0 ? { plan, square: roundedOut(boxes.reduce(joined)) } : undefined;
}

/** The room that what moves needs, as outlines in all views, and the choice of whose. */
export const roomOnBoard =
  (openLayout: OpenLayout, room: RoomView, shown: () => boolean) =>
  (view: BoardView): Contribution => {
    const rooms = $derived(shown() ? (room.answer?.rooms ?? []) : []);
    /** Of what was asked for last and is at rest: a drag leaves the sheet where it is. */
    let fitted: readonly PartRoom[] = $state.raw([]);
    /** On what occasion the pictorial was fitted to rooms last. */
    let pictured = '';
    whenever(
      () => ({ rooms, settled: room.settled }),
      (now) => {
        if (now.settled || now.rooms.length === 0) fitted = now.rooms;
      },
    );
    whenever(
      () => ({
        covered: VIEWS.map((each) => ({
          each,
          box: coveredBy(fitted, each),
          origin: view.sheet.origin[each],
        })),
        occasion: `${view.occasion} ${fitted.map(({ part }) => part).join()}`,
      }),
      ({ covered, occasion }) => {
        // First, so that a sheet that is fitted anew is fitted with it; a drag leaves the picture as large as it is.
        if (occasion !== pictured) view.pictorial.beside = besidePicture(fitted);
        pictured = occasion;
        for (const { each, box, origin } of covered)
          view.putBeside(`room ${each}`, box && { view: each, box: moved(box, origin) }, occasion);
      },
    );
    whenever(
      () => (shown() && view.pictorial.shown ? view.pictorial.turn : undefined),
      (turn) => {
        room.turn = turn;
      },
    );
    whenever(
      () => view.pictorial.square,
      (square) => {
        room.square = square;
      },
    );

    return {
      id: 'room',
      overlay: ({ shown: views, onBoard }) => {
        const lines: OverlayLine[] = [];
        for (const { part, outlines } of rooms)
          for (const each of views)
            for (const outline of outlines[each]) {
              const points: number[] = [];
              // Around, and back to where it begins.
              for (let i = 0; i <= outline.length; i += 2) {
                const at = i % outline.length;
                points.push(...onBoard(each, [outline[at] as number, outline[at + 1] as number]));
              }
              lines.push({ points, ink: INKS[part] });
            }
        return { lines };
      },
      outlinesInTurn: () => {
        const turn = room.answer?.turn;
        if (!turn) return [];
        return rooms.flatMap(({ part, turned }) =>
          turned.map((points) => ({ turn, points, ink: INKS[part] })),
        );
      },
      above: piece(RoomChoice, {
        openLayout,
        room,
        get shown() {
          return shown() && openLayout.document !== null;
        },
      }),
      spots: {
        /** The lowest place of a part's room in a view. */
        room: (part: SweptPart, each: View) => {
          const found = rooms.find((other) => other.part === part)?.outlines[each] ?? [];
          const places = found.flatMap((line) =>
            Array.from(
              { length: line.length / 2 },
              (_, i) => [line[2 * i], line[2 * i + 1]] as [number, number],
            ),
          );
          const lowest = places.sort((a, b) => b[1] - a[1])[0];
          return lowest && { view: each, at: lowest };
        },
      },
    };
  };

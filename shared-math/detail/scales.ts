/**
 * Enlarging scales of technical drawings, the largest first: a detail is drawn at one of these.
 * Source: ISO 5455:1979, Technical drawings, Scales, clause 4: enlargement 50:1, 20:1, 10:1, 5:1, 2:1; what is left out
 * here would show less than the travel of any axle.
 */
export const ENLARGEMENTS = [10, 5, 2] as const;

/** The recommended scales of ISO 5455 from enlargement over full size to reduction, as the factor from car to paper. */
const RECOMMENDED = [10, 5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20] as const;

/**
 * The largest enlargement at which a circle of this radius fits a room this wide, both in one unit; the least of them
 * where none does, in which case the circle has to show less.
 */
export function enlargementFor(radius: number, room: number): number {
  return ENLARGEMENTS.find((times) => 2 * radius * times <= room) ?? 2;
}

/** The largest recommended scale at which `width` × `height` mm of the car fit a room of mm of paper; the least where none does. */
export function paperScaleFor(
  width: number,
  height: number,
  room: { readonly width: number; readonly height: number },
): number {
  return RECOMMENDED.find((times) => width * times <= room.width && height * times <= room.height) ?? 1 / 20;
}

/** A scale as drawings write it: "5 : 1", "1 : 2". */
export function detailScaleWords(times: number): string {
  return times >= 1 ? `${Math.round(times)} : 1` : `1 : ${Math.round(1 / times)}`;
}

import type { Photo } from '../../../../shared-math/layout/index.ts';
import type { Observed, PhotoSpot } from '../../../../shared-math/trace/index.ts';

/** What a click on the photo means. */
export type Tool =
  | 'straighten'
  | 'lens'
  | 'scale'
  | 'level'
  | 'floor'
  | 'wheels'
  | 'anchor'
  | 'point'
  | 'outline'
  | 'note'
  | 'crop';

/** Spots that a step asks for; a line has no end. */
export const WANTED: Record<Tool, number> = {
  straighten: 4,
  lens: 40,
  scale: 2,
  level: 2,
  floor: 2,
  wheels: 2,
  anchor: 1,
  point: 1,
  outline: 40,
  note: 2,
  crop: 2,
};

/** The spots that a photo has been given for a step. */
export function spotsOf(photo: Photo, tool: Tool): readonly PhotoSpot[] {
  if (tool === 'straighten') return photo.straighten?.points.map(({ at }) => at) ?? [];
  if (tool === 'lens') return photo.lens?.line ?? [];
  if (tool === 'scale' && photo.scale) return [photo.scale.from, photo.scale.to];
  if (tool === 'level' && photo.level) return [photo.level.from, photo.level.to];
  if (photo.levelCheck?.by === tool) return [photo.levelCheck.from, photo.levelCheck.to];
  if (tool === 'anchor' && photo.anchor) return [photo.anchor.at];
  return [];
}

/** What changes of a photo when one of a step's spots is moved, `at` being the one; undefined if the step has none. */
export function withSpots(
  photo: Photo,
  tool: Tool,
  spots: readonly PhotoSpot[],
  at: number,
): Partial<Photo> | undefined {
  const [a, b] = spots;
  const to = spots[at];
  if (!a || !to) return undefined;
  if (tool === 'straighten' && photo.straighten) {
    const { points } = photo.straighten;
    return { straighten: { points: points.with(at, { at: to, place: points[at]?.place ?? [0, 0] }) } };
  }
  if (tool === 'lens') return { lens: { line: [...spots] } };
  if (tool === 'scale' && photo.scale && b) return { scale: { ...photo.scale, from: a, to: b } };
  if (tool === 'level' && b) return { level: { from: a, to: b } };
  if (b && photo.levelCheck && (tool === 'floor' || tool === 'wheels'))
    return { levelCheck: { by: tool, from: a, to: b } };
  if (tool === 'anchor' && photo.anchor) return { anchor: { ...photo.anchor, at: a } };
  return undefined;
}

/** The step in which something of a photo is clicked; null for what is typed. */
export function toolOf({ kind }: Observed, straightened: boolean): Tool | null {
  if (kind === 'corner') return straightened ? 'straighten' : 'scale';
  if (kind === 'lens' || kind === 'level') return kind;
  if (kind === 'anchor' || kind === 'stands') return 'anchor';
  return kind === 'mark' || kind === 'depth' ? 'point' : null;
}

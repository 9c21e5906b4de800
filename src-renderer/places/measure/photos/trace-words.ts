import type { Photo } from '../../../../shared-math/layout/index.ts';
import type { LevelCheck, TraceFailure } from '../../../../shared-math/trace/index.ts';
import { formatDegrees, toDegrees } from '../../../../shared-math/units/index.ts';

const TROUBLES: Record<TraceFailure['step'], Record<string, string>> = {
  lens: {
    'too-few-points': 'A line for the lens needs three points or more.',
    'line-too-short':
      'This line is too short to show how the lens bends: take one that crosses most of the photo.',
    'line-through-the-middle':
      'A line through the middle of the photo stays straight in any lens: take one near an edge.',
  },
  straighten: {
    'too-few-points': 'Straightening needs four corners.',
    'points-on-a-line': 'Three of these corners lie on a line: a rectangle has four.',
    crossed:
      'These corners cross over: click them one after another around the rectangle, from the upper left to the right.',
    'no-camera':
      'No camera shows a rectangle with these sides like this: check both sides, and that all corners belong to one flat rectangle.',
  },
  scale: {
    'zero-scale':
      'These two points are one spot, or their distance is nothing: a scale needs two points apart.',
  },
  level: { 'zero-length': 'These two points are one spot: a level line needs two points apart.' },
  distance: {
    'no-camera': 'No camera shows the rectangle like this from that distance: measure the distance again.',
  },
};

/** Why a step of the calibration cannot be, as one sentence. */
export function traceTrouble({ step, why }: TraceFailure): string {
  return TROUBLES[step][why] ?? 'The photo cannot be put to scale like this.';
}

/** What has to be given before a photo's camera can be found, as the end of a sentence; empty if nothing has. */
export function stillWanted({ straighten, scale, anchor, distance, focal }: Photo): string {
  const wanted = [
    ...(straighten || scale ? [] : ['a rectangle or two points to scale it by']),
    ...(anchor ? [] : ['a known point to place it by']),
    ...(distance === undefined && !focal ? ['how far the camera stood'] : []),
  ];
  return [wanted.slice(0, -1).join(', '), wanted.at(-1) ?? ''].filter(Boolean).join(' and ');
}

const CHECKED_BY: Record<LevelCheck['by'], string> = {
  floor: 'The floor',
  wheels: 'The line through both wheel centres',
  rectangle: 'The rectangle’s upper side',
};

/** Whether a photo's level agrees with what it was checked by; if not, by how much and what that puts off. */
export function levelCheckWords(
  { by, angle, agrees, worst }: LevelCheck,
  { level, view }: Photo,
  name: (point: string) => string,
  length: (mm: number) => string,
): string {
  const size = formatDegrees(toDegrees(angle < 0 ? -angle : angle), 1);
  const against = level ? 'the level line' : 'the rectangle';
  const wanted = by === 'wheels' && view === 'top' ? `square to ${against}` : `with ${against}`;
  if (agrees) return `${CHECKED_BY[by]} runs ${wanted}, within what clicking explains.`;
  const cost = worst && ` It puts the ${name(worst.point).toLowerCase()} off by ${length(worst.off)}.`;
  return `${CHECKED_BY[by]} does not run ${wanted}: ${size} apart.${cost ?? ''} One of the two is not level.`;
}

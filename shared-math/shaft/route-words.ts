import type { ShaftDocument } from '../layout/index.ts';
import type { FitStatus } from './ends.ts';
import type { SupportCheck } from './route-check.ts';
import type { NoRoute } from './suggest.ts';

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];
const counted = (count: number) => COUNTS[count] ?? String(count);

/** Whether a shaft's bearings are enough, and why any are wanted. Common practice, no published source. */
export function supportSentence({ because, needed, placed, byColumnBearing }: SupportCheck): string {
  const why =
    because === 'double-joint'
      ? 'A double joint does not hold its shaft by itself'
      : 'Three or more joints leave a shaft hanging loose';
  if (byColumnBearing) return `${why}: the column’s own lower bearing has to stand close to it.`;
  const bearings = needed === 1 ? 'support bearing' : 'support bearings';
  const wanted = `${why}: ${counted(needed)} ${bearings} wanted`;
  return placed >= needed
    ? `${wanted}, ${counted(placed)} there.`
    : `${wanted}, ${counted(placed)} there. Add one.`;
}

export const STATUS_WORDS: Readonly<Record<FitStatus, string>> = {
  fits: 'go together',
  mismatch: 'do not go together',
  'trial-fit': 'trial-fit first',
  untold: 'not described yet',
};

/** Why there is no route of so many joints, as a sentence. */
export function noRouteSentence(reason: NoRoute, length: (mm: number) => string): string {
  switch (reason.kind) {
    case 'axes-apart':
      return Number.isFinite(reason.gap)
        ? `One joint needs axes that meet: these pass ${length(reason.gap)} apart.`
        : 'One joint needs axes that meet: these run side by side.';
    case 'out-of-slide':
      return 'The axes meet where no joint can stand on both.';
    case 'not-clear':
      return `Nothing gets through: ${length(reason.lacking)} of room is lacking beside ${reason.name.toLowerCase()}.`;
    case 'locked':
      return 'The best that was found folds a joint until it locks.';
  }
}

const some = (count: number, word: string) => `${count} ${word}${count === 1 ? '' : 's'}`;

/** What a route takes to build: "1 single joint, 1 double joint, 1 shaft, 1 support". */
export function partsWords({ joints, shafts, supports }: ShaftDocument): string {
  const doubles = joints.filter(({ kind }) => kind === 'double').length;
  const singles = joints.length - doubles;
  const kinds = [
    ...(singles > 0 ? [some(singles, 'single joint')] : []),
    ...(doubles > 0 ? [some(doubles, 'double joint')] : []),
  ];
  return [
    ...kinds,
    ...(shafts.length > 0 ? [some(shafts.length, 'shaft')] : []),
    ...(supports.length > 0 ? [some(supports.length, 'support')] : []),
  ].join(', ');
}

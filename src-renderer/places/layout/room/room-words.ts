import type { SweptPart } from '../../../../shared-math/swept/index.ts';

export const ROOM_WORDS: Record<SweptPart, string> = {
  tyre: 'tyre',
  'drag-link': 'drag link',
  'tie-rod': 'tie rod',
};

/** Over what the room is shown: "3 in bump to 3 in droop, 3° of roll each way, lock to lock". */
export function roomOver(
  travel: { readonly bump: number; readonly rebound: number; readonly roll: number },
  length: (mm: number) => string,
  degrees: (value: number) => string,
): string {
  const rolled = travel.roll > 0 ? `, ${degrees(travel.roll)} of roll each way` : '';
  return `${length(travel.bump)} bump to ${length(travel.rebound)} droop${rolled}, lock to lock`;
}

import { type LinkMargins, leastMargin, timesWords } from '../../../../shared-math/forces/index.ts';
import type { LinkMaterial } from '../../../../shared-math/layout/index.ts';
import type { ArmKey, CutLength, EndName, EndRoom } from '../../../../shared-math/links/index.ts';
import { type LengthStyle, lengthBeside } from '../../../../shared-math/units/index.ts';
import type { Words } from '../../../../shared-math/words/index.ts';

export const SECTION_CHOICES: Words<'unknown' | 'tube' | 'rod'> = [
  ['unknown', 'not known'],
  ['tube', 'tube'],
  ['rod', 'solid rod'],
];

export const MATERIAL_CHOICES: Words<'unknown' | LinkMaterial> = [
  ['unknown', 'not known'],
  ['mild-steel', 'mild steel'],
  ['drawn-steel', 'drawn steel (1020)'],
  ['chromoly', 'chromoly (4130)'],
  ['stainless', 'stainless (304)'],
];

export const END_CHOICES: Words<'unknown' | 'threaded' | 'welded'> = [
  ['unknown', 'not known'],
  ['threaded', 'threaded'],
  ['welded', 'welded eye'],
];

export const HAND_CHOICES: Words<'unknown' | 'right' | 'left'> = [
  ['unknown', 'not known'],
  ['right', 'right-hand'],
  ['left', 'left-hand'],
];

export const END_NAMES: Readonly<Record<EndName, string>> = {
  pitman: 'Pitman arm end',
  steeringArm: 'Steering arm end',
  left: 'Left end',
  right: 'Right end',
  axle: 'Axle end',
  frame: 'Frame end',
};

export const ARM_NAMES: Readonly<Record<ArmKey, string>> = {
  pitmanArm: 'Pitman arm',
  steeringArm: 'Steering arm',
  tieRodArms: 'Tie rod arms',
};

/** The least margin of a link over all cases, in a word for its heading: "holds 1.8 times the load". */
export function leastWords(margins: LinkMargins): string {
  const least = leastMargin(margins);
  return least?.margin.times === undefined ? '' : `holds ${timesWords(least.margin.times)} the load`;
}

export const BEARS_BY: Readonly<Record<'euler' | 'johnson' | 'bend' | 'yield', string>> = {
  euler: 'bows out (Euler)',
  johnson: 'yields as it bows (J. B. Johnson)',
  bend: 'yields at its bend',
  yield: 'yields along its length',
};

/** What is short at an end, as a sentence without its full stop; empty where nothing is. */
export function shortWords(room: EndRoom, style: LengthStyle): string {
  const stays = lengthBeside(Math.max(0, room.engagedLeast), [room.wanted], style);
  const thread = `${stays} of thread stays in the tube, wanted ${lengthBeside(room.wanted, [room.engagedLeast], style)}`;
  const nut = `the jam nut lacks ${lengthBeside(Math.max(0, -room.jamRoomLeast), [0], style)} of thread`;
  if (room.short === 'thread') return thread;
  if (room.short === 'jam-nut') return nut;
  return room.short === 'both' ? `${thread}; ${nut}` : '';
}

/** Why a tube is cut as long as it is: "42 in centre to centre, less 1 1/2 in and 1 1/2 in at its ends". */
export function cutReasons({ steps }: CutLength, length: (mm: number) => string): string {
  const centres = steps.find(({ of }) => of === 'centre-to-centre');
  const bend = steps.find(({ of }) => of === 'bend');
  const offs = steps.filter(({ of }) => of === 'take-off');
  return [
    `${length(centres?.adds ?? 0)} centre to centre`,
    ...(bend ? [`${length(bend.adds)} more for one bend in the middle`] : []),
    `less ${offs.map(({ adds, assumed }) => `${length(-adds)}${assumed ? ' (assumed)' : ''}`).join(' and ')} at its ends`,
  ].join(', ');
}

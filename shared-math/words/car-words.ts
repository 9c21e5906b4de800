import {
  LATERAL_FACTS,
  type LateralKind,
  type LayoutDocument,
  LOCATION_FACTS,
  type LocationKind,
  type Side,
} from '../layout/index.ts';

// The kinds of the layout document, in the words of somebody who builds one.

/** What may be chosen, with the words for each. */
export type Words<Value extends string> = readonly (readonly [value: Value, words: string])[];

export const LOCATION_WORDS: Words<LocationKind> = (Object.keys(LOCATION_FACTS) as LocationKind[]).map(
  (kind) => [kind, LOCATION_FACTS[kind].words],
);

export const LATERAL_WORDS: Words<LateralKind> = (Object.keys(LATERAL_FACTS) as LateralKind[]).map((kind) => [
  kind,
  LATERAL_FACTS[kind].words,
]);

/** How a quarter-elliptic spring meets the axle. */
export const EYES_WORDS: Words<'pinned' | 'sliding'> = [
  ['pinned', 'pinned, rod on balls'],
  ['sliding', 'sliding, rod rigid'],
];

/** What the bolt of a Watt's rocker is held by. */
export const ROCKER_WORDS: Words<'axle' | 'frame'> = [
  ['axle', 'the axle'],
  ['frame', 'the frame'],
];

export const BEAM_WORDS: Words<LayoutDocument['axle']['beam']> = [
  ['i-beam', 'I-beam, twists'],
  ['tube', 'tube, stiff'],
];

export const SIDE_WORDS: Words<Side> = [
  ['left', 'left wheel'],
  ['right', 'right wheel'],
];

export const DRIVER_WORDS: Words<Side> = [
  ['left', 'on the left'],
  ['right', 'on the right'],
];

export const ASSIST_WORDS: Words<LayoutDocument['steering']['box']['assist']> = [
  ['manual', 'manual'],
  ['power', 'power'],
];

/** The words of a choice. */
export function wordsOf<Value extends string>(words: Words<Value>, value: Value): string {
  return words.find(([entry]) => entry === value)?.[1] ?? value;
}

export const CAUTION =
  "Steering parts fail dangerously. The board measures geometry; it certifies nothing. Follow local codes, the parts' makers and licensed practice.";

import type { LateralKind, LocationKind, Side } from '../../shared-math/layout/index.ts';
import type { Swing } from '../document/conversions.ts';

// The kinds of the layout document, in the words of somebody who builds one.

type Words<Value extends string> = readonly (readonly [value: Value, words: string])[];

export const LOCATION_WORDS: Words<LocationKind> = [
  ['hairpins', 'hairpin rods'],
  ['wishbone', 'wishbone'],
  ['four-bar', 'four bars'],
  ['parallel-leaf', 'parallel leaf springs'],
];

export const LATERAL_WORDS: Words<LateralKind> = [
  ['bar', 'a lateral bar'],
  ['spring', 'the spring itself'],
];

export const BEAM_WORDS: Words<'i-beam' | 'tube'> = [
  ['i-beam', 'I-beam, twists'],
  ['tube', 'tube, stiff'],
];

export const SIDE_WORDS: Words<Side> = [
  ['left', 'left wheel'],
  ['right', 'right wheel'],
];

export const SWING_WORDS: Words<Swing> = [
  ['fore-and-aft', 'fore and aft'],
  ['across', 'across the car'],
  ['flat', 'level, on a standing shaft'],
];

export const ASSIST_WORDS: Words<'manual' | 'power'> = [
  ['manual', 'manual'],
  ['power', 'power'],
];

export const STOP_WORDS: Words<'none' | 'set'> = [
  ['none', 'none'],
  ['set', 'end the turn'],
];

export const CAUTION =
  "Steering parts fail dangerously. The board measures geometry; it certifies nothing. Follow local codes, the parts' makers and licensed practice.";

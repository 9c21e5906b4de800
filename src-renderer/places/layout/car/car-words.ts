import type { Words } from '../../../../shared-math/words/index.ts';
import type { Swing } from '../../../document/conversions.ts';

// Choices that the document does not have as such, in the words of somebody who builds one.

export const SWING_WORDS: Words<Swing> = [
  ['fore-and-aft', 'fore and aft'],
  ['across', 'across the car'],
  ['flat', 'level, on a standing shaft'],
];

export const STOP_WORDS: Words<'none' | 'set'> = [
  ['none', 'none'],
  ['set', 'end the turn'],
];

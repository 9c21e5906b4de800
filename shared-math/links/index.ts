// What links and arms are made of, how long their tubes are cut, and what thread their ends have to spare.
export { type ArmBending, armBending } from './arm-bending.ts';
export {
  bentStrutLoad,
  type ColumnLoad,
  columnLoad,
  type LinkBears,
  linkBears,
  type RoundSection,
  roundSection,
} from './columns.ts';
export { type CutLength, type CutStep, cutLength, type EndRoom, endRoom } from './cut-length.ts';
export {
  ARM_KEYS,
  type ArmKey,
  drawnLength,
  type EndName,
  LINK_ENDS,
  LINK_KEYS,
  type LinkKey,
} from './link-keys.ts';
export { type CarLink, carLinks, LINK_END_WORDS } from './links-of-car.ts';
export {
  type ArmMaking,
  armMaking,
  type EndMaking,
  type Given,
  type LinkMaking,
  linkMaking,
  type ThreadedMaking,
  type WeldedMaking,
} from './making.ts';
export { MATERIALS, type MaterialStrength } from './materials.ts';
export {
  ENGAGEMENT_WANTED,
  tradeSize,
  USUAL_ENDS,
  USUAL_HAIRPIN_OUTSIDE,
  USUAL_OUTSIDE,
  USUAL_SOURCE,
  type UsualEnd,
  usualEndFor,
} from './usual.ts';

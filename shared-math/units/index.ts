// Units at the edges: lengths and angles read and written as people write them. Inside are mm and radians.
export { type Degrees, formatDecimal, formatDegrees, type Radians, toDegrees, toRadians } from './angles.ts';
export { decimalBeside, degreesBeside, formatSteer, lengthBeside, setLength } from './distinct-words.ts';
export {
  formatForce,
  formatLoad,
  formatMoment,
  formatRimForce,
  formatStress,
  NEWTONS_PER_POUND,
  TURNED_BY_NOBODY,
} from './forces.ts';
export {
  formatDoubt,
  formatFine,
  formatLength,
  formatSpan,
  type LengthStyle,
  type LengthUnit,
  MM_PER_INCH,
  parseAngle,
  parseLength,
} from './lengths.ts';
export { formatToe, formatToeLength, parseToe } from './toe.ts';

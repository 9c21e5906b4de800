// Units at the edges: lengths and angles read and written as people write them. Inside are mm and radians.
export { type Degrees, formatDecimal, formatDegrees, type Radians, toDegrees, toRadians } from './angles.ts';
export { decimalBeside, degreesBeside, lengthBeside, setLength } from './distinct-words.ts';
export {
  formatForce,
  formatLoad,
  formatMoment,
  formatStress,
  NEWTONS_PER_POUND,
} from './forces.ts';
export {
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

import { capitalised } from '../capitalised.ts';
import { sideWords, sizeWords, splineWords, stockWords } from '../shaft/index.ts';
import { formatDecimal, formatDegrees, type LengthStyle, MM_PER_INCH } from '../units/index.ts';
import type { PartKind, PartOf, ShelfPart } from './part-schema.ts';

// What an entry of the shelf is, by its dimensions, in one line.

/** "5/8 in, 18 threads per inch", "16 mm × 1.5 mm". */
export function threadWords(thread: PartOf<'rod-end'>['thread'], style: LengthStyle): string {
  return style.unit === 'in'
    ? `${sizeWords(thread.diameter, style)}, ${Number(formatDecimal(MM_PER_INCH / thread.pitch, 2))} threads per inch`
    : `${sizeWords(thread.diameter, style)} × ${Number(formatDecimal(thread.pitch, 3))} mm`;
}

function boxWords(box: PartOf<'box'>, style: LengthStyle): string {
  return [
    `${box.mounting} steer, ${box.assist}, ${box.ratio} to 1, sector ${formatDegrees(box.sectorTravel)} each way`,
    `turns ${box.turns} at the arm`,
    box.input ? `input ${splineWords(box.input, style)}` : '',
    box.sector ? `sector ${splineWords(box.sector, style)}` : '',
    box.size ? box.size.map((mm) => sizeWords(mm, style)).join(' × ') : '',
  ]
    .filter(Boolean)
    .join('; ');
}

function jointWords({ joint, ends, limit }: PartOf<'joint'>, style: LengthStyle): string {
  const [first, second] = ends.map((end) => sideWords(end, style));
  const sides = first === second ? `both ends ${first}` : `${first}; ${second}`;
  return `${joint}: ${sides}${limit === undefined ? '' : `; up to ${formatDegrees(limit, 0)}`}`;
}

function armWords({ arm, length, hole, ballHole }: PartOf<'arm'>, style: LengthStyle): string {
  const size = (mm: number) => sizeWords(mm, style);
  const held = hole && (hole.kind === 'bore' ? `bore ${size(hole.diameter)}` : splineWords(hole, style));
  const taper = ballHole?.taper === undefined ? 'plain' : `taper 1 in ${ballHole.taper}`;
  return [
    `${arm === 'pitman' ? 'pitman arm' : 'steering arm'}, ${size(length)} to the ball`,
    held ?? '',
    ballHole ? `ball hole ${size(ballHole.diameter)}, ${taper}` : '',
  ]
    .filter(Boolean)
    .join('; ');
}

function rodEndWords(part: PartOf<'rod-end'>, style: LengthStyle): string {
  const thread = `${part.hand}-hand thread ${threadWords(part.thread, style)}`;
  return `${thread}; hole or stud ${sizeWords(part.size, style)}; ball ${formatDegrees(part.ballAngle, 0)} each way`;
}

/** The line of each kind of part. */
const LINES: { readonly [Kind in PartKind]: (part: PartOf<Kind>, style: LengthStyle) => string } = {
  box: boxWords,
  joint: jointWords,
  stock: ({ stock, length }, style) => `${stockWords(stock, style)}; ${sizeWords(length, style)} long`,
  support: ({ bore }, style) => `bored ${sizeWords(bore, style)}`,
  'rod-end': rodEndWords,
  arm: armWords,
};

/** "Single: both ends round bore 3/4 in to weld; up to 30°". Without the entry's own name. */
export function partWords(part: ShelfPart, style: LengthStyle): string {
  const line = LINES[part.kind] as (part: ShelfPart, style: LengthStyle) => string;
  return capitalised(line(part, style));
}

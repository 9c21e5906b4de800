import type { JointSide, ShaftEnd, ShaftStock, SplineForm } from '../layout/index.ts';
import { distinctWords } from '../units/distinct-words.ts';
import { formatDecimal, formatLength, type LengthStyle, MM_PER_INCH } from '../units/index.ts';

// What the parts of a shaft are called, with their dimensions, in the reader's unit.

/** mm. A size this near to a sixty-fourth of an inch is called by the fraction. */
const BY_FRACTION = 0.01;

/** A part's size: "3/4 in", "0.560 in", "19.05 mm". Finer than a length on the drawing, as parts are bought by it. */
export function sizeWords(mm: number, style: LengthStyle): string {
  if (style.unit === 'mm') return `${Number(formatDecimal(mm, 2))} mm`;
  const parts = (mm / MM_PER_INCH) * 64;
  return Math.abs(parts - Math.round(parts)) * (MM_PER_INCH / 64) < BY_FRACTION
    ? formatLength(mm, { unit: 'in', fraction: 64 })
    : formatLength(mm, { unit: 'in', fraction: 0 });
}

/** mm. What a size's last decimal cannot tell: half of 0.0001 in, of 0.001 mm. */
const ALIKE = { in: 5e-5 * MM_PER_INCH, mm: 5e-4 };

/** A part's size that does not read as the other where it is not that: with one more decimal where it has to. */
export function sizeBeside(mm: number, other: number, style: LengthStyle): string {
  const finer = (value: number) =>
    style.unit === 'mm' ? `${formatDecimal(value, 3)} mm` : `${formatDecimal(value / MM_PER_INCH, 4)} in`;
  return distinctWords(mm, [other], [(value) => sizeWords(value, style), finer], ALIKE[style.unit]);
}

const FORM_WORDS: Record<SplineForm, string> = {
  'involute-30': 'involute 30°',
  'involute-37.5': 'involute 37.5°',
  'involute-45': 'involute 45°',
  'metric-30': 'metric involute 30°',
  'metric-37.5': 'metric involute 37.5°',
  'metric-45': 'metric involute 45°',
  'reference-30': 'involute 30° to a reference diameter',
  serrated: 'serrated',
  unidentified: 'form not identified',
};

interface SplineFacts {
  readonly form: SplineForm;
  readonly teeth: number;
  readonly pitch?: number | undefined;
  readonly module?: number | undefined;
  readonly diameter: number;
}

/** "48/96 pitch", "module 1"; empty where neither is given. */
export function toothSizeWords({ pitch, module }: Pick<SplineFacts, 'pitch' | 'module'>): string {
  if (pitch !== undefined) return `${pitch}/${2 * pitch} pitch`;
  return module === undefined ? '' : `module ${module}`;
}

/** "spline of 36 teeth on 13/16 in, 48/96 pitch, involute 45°". */
export function splineWords(spline: SplineFacts, style: LengthStyle): string {
  const size = toothSizeWords(spline);
  return `spline of ${spline.teeth} teeth on ${sizeWords(spline.diameter, style)}, ${size && `${size}, `}${FORM_WORDS[spline.form]}`;
}

/** "double-D 3/4 in, 0.560 in across the flats". */
export function flatsWords(across: number, flats: number, style: LengthStyle): string {
  return `double-D ${sizeWords(across, style)}, ${sizeWords(flats, style)} across the flats`;
}

/** A shaft's end: "round 3/4 in", "double-D …", "spline of …". */
export function endWords(end: ShaftEnd, style: LengthStyle): string {
  if (end.kind === 'round') return `round ${sizeWords(end.diameter, style)}`;
  if (end.kind === 'double-d') return flatsWords(end.diameter, end.acrossFlats, style);
  return splineWords(end, style);
}

/** A joint's end: "round bore 3/4 in to weld", "double-D … with set screw", "spline of … with pinch bolt". */
export function sideWords(side: JointSide, style: LengthStyle): string {
  switch (side.kind) {
    case 'weld':
      return `round bore ${sizeWords(side.bore, style)} to weld`;
    case 'double-d-set-screw':
      return `${flatsWords(side.bore, side.acrossFlats, style)}, with set screw`;
    case 'double-d-pinch-bolt':
      return `${flatsWords(side.bore, side.acrossFlats, style)}, with pinch bolt`;
    case 'spline-pinch-bolt':
      return `${splineWords(side, style)}, with pinch bolt`;
    case 'spline':
      return splineWords(side, style);
  }
}

/** A joint's end that takes this shaft's end, for ordering by dimension. */
export function sideForEnd(end: ShaftEnd, style: LengthStyle): string {
  if (end.kind === 'round') return `a round bore ${sizeWords(end.diameter, style)} to weld`;
  if (end.kind === 'double-d')
    return `a ${flatsWords(end.diameter, end.acrossFlats, style)}, with set screw or pinch bolt`;
  return `a ${splineWords(end, style)}, with pinch bolt`;
}

/** A shaft's end that goes into this joint's end. */
export function endForSide(side: JointSide, style: LengthStyle): string {
  if (side.kind === 'weld') return `a round end ${sizeWords(side.bore, style)}`;
  if ('acrossFlats' in side) return `a ${flatsWords(side.bore, side.acrossFlats, style)} end`;
  return `a ${splineWords(side, style)} end`;
}

const MATERIAL_WORDS = { steel: 'plain steel', stainless: 'stainless steel' } as const;
const FORMED_WORDS = { column: 'at the column end', box: 'at the box end', both: 'at both ends' } as const;

/** Shaft stock: "round 3/4 in, plain steel", "round 3/4 in with a double-D end …". */
export function stockWords(stock: ShaftStock, style: LengthStyle): string {
  const material = stock.material === undefined ? '' : `, ${MATERIAL_WORDS[stock.material]}`;
  if (stock.kind === 'round') return `solid round ${sizeWords(stock.diameter, style)}${material}`;
  if (stock.kind === 'double-d')
    return `${flatsWords(stock.diameter, stock.acrossFlats, style)}, full length${material}`;
  const formed = `${sizeWords(stock.formed, style)} long ${FORMED_WORDS[stock.ends]}`;
  if (stock.kind === 'double-d-end')
    return `round ${sizeWords(stock.diameter, style)} with ${flatsWords(stock.diameter, stock.acrossFlats, style)}, ${formed}${material}`;
  return `${splineWords(stock, style)}, ${formed}${material}`;
}

/**
 * What a piece of a shaft is cut from. The outer of two that slide is a tube: the layout holds the form that the inner one
 * slides in, neither the tube's outside nor its wall, which are said to be the maker's.
 */
export function pieceWords(
  stock: ShaftStock,
  slides: 'outer' | 'inner' | undefined,
  style: LengthStyle,
): string {
  if (slides === undefined || stock.kind === 'round') return stockWords(stock, style);
  const material = stock.material === undefined ? '' : `, ${MATERIAL_WORDS[stock.material]}`;
  const form =
    'teeth' in stock ? splineWords(stock, style) : flatsWords(stock.diameter, stock.acrossFlats, style);
  if (slides === 'inner') return `${stockWords(stock, style)} (it slides in the outer piece)`;
  return `a tube whose bore slides on the inner piece’s ${form}${material} (its outside and wall are the maker’s, not given in this layout)`;
}

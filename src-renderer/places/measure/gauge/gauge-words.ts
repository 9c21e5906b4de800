import type { Explanation, Gauge, TellingMeasure } from '../../../../shared-math/adjust/gauge/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import { failed, type Outcome, succeeded } from '../../../../shared-math/outcome.ts';
import {
  formatDecimal,
  type LengthUnit,
  MM_PER_INCH,
  parseAngle,
} from '../../../../shared-math/units/index.ts';

export const GAUGE_CHOICES: readonly (readonly [Gauge['kind'], string])[] = [
  ['angle', 'Reads the angle'],
  ['dials', 'Two dials on a plate'],
  ['edges', 'Rim edges to a line'],
];

/** How each gauge is used: a sentence. */
export const GAUGE_HOW: Record<Gauge['kind'], string> = {
  angle: 'Set to zero at ride height; toe-in counts as plus, toe-out as minus.',
  dials:
    'Both dials set to zero at ride height; away from the car counts as plus. Front is the dial ahead of the hub.',
  edges:
    'A straight line stretched beside the wheel; how far each edge of the rim has moved out since ride height, in as minus.',
};

export const GAUGE_SPACING: Record<Exclude<Gauge['kind'], 'angle'>, string> = {
  dials: 'Dials apart',
  edges: 'Rim, edge to edge',
};

/** "+0.12°", "−0.30°": toe-in gained. */
export function toeFigure(degrees: number): string {
  const text = formatDecimal(Math.abs(degrees), 2);
  if (Number(text) === 0) return `${text}°`;
  return `${degrees > 0 ? '+' : '−'}${text}°`;
}

/** Reads toe: "0.12", "-0.3", "0.3 out", "0.12° toe-in". Degrees, toe-in positive. */
export function parseToe(typed: string): Outcome<number, string> {
  const match = /^(.*?)\s*(?:toe[- ]?)?(in|out)?\s*$/i.exec(typed.replaceAll('−', '-'));
  const way = match?.[2]?.toLowerCase();
  const angle = parseAngle((match?.[1] ?? typed).trim());
  if (!angle.ok) return angle;
  if (way && angle.value < 0) return failed('either a minus or “out”, not both');
  return succeeded(way === 'out' ? -angle.value : angle.value);
}

/** A dial's figure: thousandths of an inch or hundredths of a millimetre. */
export function dialFigure(mm: number, unit: LengthUnit): string {
  return unit === 'in' ? `${formatDecimal(mm / MM_PER_INCH, 3)} in` : `${formatDecimal(mm, 2)} mm`;
}

interface Figures {
  length(mm: number): string;
}

/** mm below which a part of a move is not worth a word. */
const WORTH = 0.5;

/** "3/8 in lower and 1/8 in further back". */
export function moveWords({ move }: Pick<Explanation, 'move'>, at: Point, figures: Figures): string {
  const largest = Math.max(...move.map(Math.abs));
  const out = at[1] < 0 ? -1 : 1;
  const parts = (
    [
      [move[0], 'further ahead', 'further back'],
      [move[1] * out, 'further out', 'further in'],
      [move[2], 'higher', 'lower'],
    ] as const
  )
    .filter(([by]) => Math.abs(by) > Math.max(WORTH, largest / 4))
    .sort((a, b) => Math.abs(b[0]) - Math.abs(a[0]))
    .map(([by, more, less]) => `${figures.length(Math.abs(by))} ${by > 0 ? more : less}`);
  return parts.join(' and ');
}

const AXIS_WORDS = { x: 'distance back from the axle', y: 'distance out from the centre line', z: 'height' };

/** "height: drawn 13 3/4 in, it would be 13 3/8 in". */
export function measureWords({ axis, drawn, expected }: TellingMeasure, figures: Figures): string {
  const words = (mm: number) => figures.length(axis === 'z' ? mm : Math.abs(mm));
  return `${AXIS_WORDS[axis]}: drawn ${words(drawn)}, it would be ${words(expected)}`;
}

// Colours of a scale, made from the page's tokens in a space whose lightness is even to the eye (Oklab).

/** Lightness 0 to 1, chroma, hue in radians. */
export interface Shade {
  readonly lightness: number;
  readonly chroma: number;
  readonly hue: number;
}

const linear = (channel: number) =>
  channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
const encoded = (value: number) => (value <= 0.0031308 ? 12.92 * value : 1.055 * value ** (1 / 2.4) - 0.055);

/** A colour written as six hexadecimal digits as the eye has it. */
export function shadeOf(colour: string): Shade {
  const digits = /^#([0-9a-f]{6})$/i.exec(colour.trim())?.[1] ?? '808080';
  const [r, g, b] = [0, 2, 4].map((at) => linear(Number.parseInt(digits.slice(at, at + 2), 16) / 255)) as [
    number,
    number,
    number,
  ];
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  const a = 1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s;
  const c = 0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s;
  return {
    lightness: 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    chroma: Math.hypot(a, c),
    hue: Math.atan2(c, a),
  };
}

/** The colour of a shade as six hexadecimal digits; what a screen cannot show is brought to its edge. */
export function colourOf({ lightness, chroma, hue }: Shade): string {
  const a = chroma * Math.cos(hue);
  const b = chroma * Math.sin(hue);
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  const channels = [
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ];
  return `#${channels
    .map((value) => Math.round(255 * Math.min(1, Math.max(0, encoded(Math.min(1, Math.max(0, value)))))))
    .map((value) => value.toString(16).padStart(2, '0'))
    .join('')}`;
}

/** The tokens that a scale is made from. */
export interface RampTokens {
  /** The lightest, where the value is least. */
  readonly paper: string;
  /** Whose hue is that of what is within the limit, and of what is beyond it. */
  readonly within: string;
  readonly beyond: string;
}

/** Lightness of the last step: ink and steel blue still stand off it. */
const DARKEST = 0.69;
const CHROMA = { within: [0.024, 0.04], beyond: [0.045, 0.098] } as const;

/**
 * The colours of a scale's steps, from the least value up. Lightness falls by the same amount from step to step, so that
 * the scale reads the same in grey and to every eye; the first `within` steps have a cool hue and the others a warm one
 * as a second sign of where the limit is, on the axis of colours that the common colour blindnesses leave.
 */
export function rampColours(tokens: RampTokens, steps: number, within: number): string[] {
  const lightest = Math.min(0.985, shadeOf(tokens.paper).lightness + 0.005);
  return Array.from({ length: steps }, (_, step) => {
    const kind = step < within ? 'within' : 'beyond';
    const [first, count] = kind === 'within' ? [0, within] : [within, steps - within];
    const share = count > 1 ? (step - first) / (count - 1) : 1;
    const [from, to] = CHROMA[kind];
    return colourOf({
      lightness: steps > 1 ? lightest + ((DARKEST - lightest) * step) / (steps - 1) : lightest,
      chroma: from + (to - from) * share,
      hue: shadeOf(tokens[kind]).hue,
    });
  });
}

import { speech } from '../../shared-math/findings/finding.ts';
import {
  type Analysis,
  analyse,
  type Finding,
  RULES,
  type ShopLimits,
} from '../../shared-math/findings/index.ts';
import { type LayoutDocument, resolveLayout } from '../../shared-math/layout/index.ts';
import { type LengthStyle, toRadians } from '../../shared-math/units/index.ts';
import { documentOf, PLAIN_HALF, rawLayout, SIDE_STEER } from './layouts.ts';

// What one rule says of a car, in both units: for tests that hold it to whole sentences. A car is worked out once, however
// often it is judged; no clearances are looked for.

type Json = Record<string, unknown>;

export const INCHES: LengthStyle = { unit: 'in', fraction: 16 };
export const MM: LengthStyle = { unit: 'mm', fraction: 16 };
export const DEG = Math.PI / 180;

const known = new Map<string, Analysis>();

/** The analysis of a document; the same one each time that it is asked for. */
export function analysisOf(document: LayoutDocument): Analysis {
  const key = JSON.stringify(document);
  const found = known.get(key) ?? analyse(resolveLayout(document));
  known.set(key, found);
  return found;
}

/** The plain car of `rawLayout` with some of it otherwise. */
export const car = (over: Json = {}): Analysis => analysisOf(documentOf(rawLayout(over)));

/** That car without toe, so that its wheels' angles count from straight ahead. */
export const straightCar = (): Analysis => car(half({ toeIn: 0 }));

export const half = (over: Json): Json => ({
  axle: { beam: 'i-beam', left: { ...PLAIN_HALF, ...over }, right: 'mirror' },
});
export const box = (over: Json): Json => ({ ...SIDE_STEER, box: { ...SIDE_STEER.box, ...over } });
export const carWith = (over: Json): Json => ({ car: { ...(rawLayout()['car'] as Json), ...over } });

/** An analysis with parts of it put in by hand: what a rule makes of figures that a test has chosen. */
export const withParts = (analysis: Analysis, parts: object): Analysis => ({ ...analysis, ...parts });

/** The same with its layout's values otherwise, unchecked: what import and trace can bring as well. */
export function withLayout(analysis: Analysis, parts: object): Analysis {
  return { ...analysis, layout: { ...analysis.layout, ...parts } };
}

/** A turn with its locks put in: degrees of the inner and the outer wheel, and of the handwheel to each side. */
export function turned(
  analysis: Analysis,
  locks: {
    readonly left?: readonly [inner: number, outer: number];
    readonly right?: readonly [inner: number, outer: number];
    readonly handwheel?: number;
    readonly causes?: readonly [left: string, right: string];
  },
): Analysis {
  const { left = [32, 28], right = [32, 28], handwheel = 540, causes = ['stop', 'stop'] } = locks;
  return withParts(analysis, {
    turn: {
      ...analysis.turn,
      left: {
        handwheel: toRadians(handwheel),
        cause: causes[0],
        leftSteer: toRadians(left[0]),
        rightSteer: toRadians(left[1]),
      },
      right: {
        handwheel: -toRadians(handwheel),
        cause: causes[1],
        leftSteer: -toRadians(right[1]),
        rightSteer: -toRadians(right[0]),
      },
    },
  });
}

export const withTurn = (analysis: Analysis, parts: object): Analysis =>
  withParts(analysis, { turn: { ...analysis.turn, ...parts } });

export function judge(
  rule: string,
  analysis: Analysis,
  style: LengthStyle,
  shop: ShopLimits = {},
): Finding[] {
  const found = RULES.find(({ name }) => name === rule);
  if (!found) throw new Error(`no rule ${rule}`);
  const list = found.judge(analysis, speech(style, shop));
  const other = list.find((finding) => finding.rule !== rule);
  if (other) throw new Error(`${rule} speaks for ${other.rule}: ${other.sentence}`);
  return list;
}

/** The degrees nearest above this angle (below it, for a least), itself where there are such to the last bit. */
export function degreesOf(radians: number, side: 1 | -1 = 1): number {
  const about = radians / DEG;
  for (let ulps = -8; ulps <= 8; ulps += 1) {
    const degrees = about * (1 + side * ulps * Number.EPSILON);
    if (side * (toRadians(degrees) - radians) >= 0) return degrees;
  }
  throw new Error(`no number of degrees is ${radians}`);
}

/** Figures to four decimals, for comparing what was worked out with what is written down. */
export function rounded(value: unknown): unknown {
  if (typeof value === 'number') return Math.round(value * 1e4) / 1e4 + 0;
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, rounded(each)]));
}

/** A car, a rule, and each finding that it makes of the car, as `lineOf` writes it. */
export interface Said {
  readonly label: string;
  readonly rule: string;
  readonly on: () => Analysis;
  readonly inches: readonly string[];
  /** To readers of millimetres, where it reads otherwise: sentence, limit and advice. */
  readonly mm?: readonly string[] | undefined;
  readonly shop?: ShopLimits | undefined;
}

export function said(
  it: string,
  rule: string,
  on: () => Analysis,
  inches: readonly string[],
  { mm, shop }: { readonly mm?: readonly string[]; readonly shop?: ShopLimits } = {},
): Said {
  return { label: `${rule}: ${it}`, rule, on, inches, mm, shop };
}

const wordsOf = ({ sentence, limit, advice }: Finding) => [sentence, limit, advice].join(' | ');

/** All of a finding: SEVERITY PART | SENTENCE | LIMIT | ADVICE | SOURCE, and what else it carries, to four decimals. */
export function lineOf({
  rule: _,
  severity,
  part,
  source,
  sentence,
  limit,
  advice,
  ...rest
}: Finding): string {
  const more = Object.keys(rest).length > 0 ? ` | ${JSON.stringify(rounded(rest)).replaceAll('"', '')}` : '';
  return `${severity} ${part} | ${sentence} | ${limit} | ${advice} | ${source}${more}`;
}

/** What the rule says to readers of both units; of millimetres undefined if it is the same words. */
export function heard({ rule, on, shop }: Pick<Said, 'rule' | 'on' | 'shop'>): Pick<Said, 'inches' | 'mm'> {
  const [inches, mm] = [INCHES, MM].map((style) => judge(rule, on(), style, shop)) as [Finding[], Finding[]];
  const [words, other] = [inches.map(wordsOf), mm.map(wordsOf)];
  const same = words.every((each, i) => each === other[i]);
  return { inches: inches.map(lineOf), mm: same && words.length === other.length ? undefined : other };
}

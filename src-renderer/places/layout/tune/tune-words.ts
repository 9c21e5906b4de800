import type { Figures, FreedomName, HoldName, TuneResult } from '../../../../shared-math/tune/index.ts';
import { formatDecimal, formatDegrees, toDegrees } from '../../../../shared-math/units/index.ts';

/** Which way a move goes, by the axis at the end of its name. */
const WAYS: Record<string, readonly [plus: string, minus: string]> = {
  along: ['ahead', 'back'],
  across: ['to the left', 'to the right'],
  up: ['up', 'down'],
  length: ['longer', 'shorter'],
};

const WHAT: readonly [start: string, words: string][] = [
  ['box', 'the box'],
  ['pitman', 'the pitman arm'],
  ['link-end', 'the drag link’s frame end'],
  ['arm-ball', 'the steering arm ball'],
  ['bar-axle', 'the bar’s axle end'],
  ['bar-frame', 'the bar’s frame end'],
];

/** One move: "the box 3 in up". */
export function moveWords(name: string, by: number, length: (mm: number) => string): string {
  const what = WHAT.find(([start]) => name.startsWith(start))?.[1] ?? name;
  const way = WAYS[name.slice(name.lastIndexOf('-') + 1)]?.[by >= 0 ? 0 : 1] ?? '';
  return `${what} ${length(Math.abs(by))} ${way}`;
}

/** All moves of a proposal that anyone would build: "the box 3 in up, the pitman arm 1/4 in longer". */
export function movesWords({ moves }: Pick<TuneResult, 'moves'>, length: (mm: number) => string): string {
  const parts = moves
    .filter(({ by }) => length(Math.abs(by)) !== length(0))
    .map(({ name, by }) => moveWords(name, by, length));
  return parts.join(', ') || 'nothing moved';
}

export const HOLD_TITLES: Record<HoldName, string> = {
  ratio: 'Overall ratio',
  lock: 'Inner wheel at full lock, at least',
  circle: 'Turning circle between kerbs, at most',
  tilt: 'Tilt of any ball, at most',
  clearance: 'Clearances',
};

/** The groups in which what may move is offered; the first stands open. */
export const FREE_GROUPS: readonly { readonly title: string; readonly starts: readonly string[] }[] = [
  { title: 'Box and pitman arm', starts: ['box', 'pitman'] },
  { title: 'Drag link and lateral bar', starts: ['link-end', 'arm-ball', 'bar'] },
];

export const isOfGroup = (name: FreedomName, starts: readonly string[]) =>
  starts.some((start) => name.startsWith(start));

/** A figure before and after, and whether the car is better for it. */
export interface FigureRow {
  readonly words: string;
  readonly before: string;
  readonly after: string;
  readonly tone: 'better' | 'worse' | 'same';
}

type AsWords = (value: number) => string;

/** The figures of a proposal beside those as drawn. `length` for large lengths, `fine` for gaps. */
export function figureRows(
  { before, after }: Pick<TuneResult, 'before' | 'after'>,
  length: AsWords,
  fine: AsWords,
): FigureRow[] {
  const degrees: AsWords = (angle) => formatDegrees(toDegrees(angle), 2);
  const coarse: AsWords = (angle) => formatDegrees(toDegrees(angle), 1);
  const row = (
    words: string,
    of: (figures: Figures) => number | undefined,
    parts: AsWords,
    wish: 'less' | 'more' | 'none',
  ): FigureRow[] => {
    const [one, two] = [of(before), of(after)];
    if (one === undefined && two === undefined) return [];
    const [from, to] = [one, two].map((value) => (value === undefined ? '–' : parts(value))) as [
      string,
      string,
    ];
    const gain = (two ?? 0) - (one ?? 0);
    const tone =
      from === to || wish === 'none' ? 'same' : (wish === 'less') === gain < 0 ? 'better' : 'worse';
    return [{ words, before: from, after: to, tone }];
  };
  return [
    ...row('Bump steer over heave', ({ worstHeave }) => worstHeave, degrees, 'less'),
    ...row('Bump steer over roll', ({ worstRoll }) => worstRoll, degrees, 'less'),
    ...row('Bump steer, one wheel up', ({ worstOneWheel }) => worstOneWheel, degrees, 'less'),
    ...row('Toe change over heave', ({ toeChange }) => toeChange, degrees, 'less'),
    ...row(
      'Overall ratio',
      ({ ratio }) => ratio && Math.abs(ratio),
      (value) => `${formatDecimal(value, 1)} to 1`,
      'none',
    ),
    ...row('Inner wheel at full lock', ({ innerLock }) => innerLock, coarse, 'more'),
    ...row(
      'Circle between kerbs',
      ({ circle }) => (Number.isFinite(circle) ? circle : undefined),
      length,
      'less',
    ),
    ...row('Most tilt at a ball', ({ tilt }) => tilt, coarse, 'less'),
    ...row('Nearest gap', ({ nearest }) => nearest?.distance, fine, 'more'),
  ];
}

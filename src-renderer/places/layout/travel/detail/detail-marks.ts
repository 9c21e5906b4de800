import {
  type ArcsDetail,
  clippedToCircle,
  type DetailCircle,
  type GapTick,
  reachBetween,
} from '../../../../../shared-math/detail/index.ts';
import type { ViewPoint } from '../../../../../shared-math/drawing/index.ts';
import type { ScreenPoint } from '../../../../board/camera.ts';
import type { OverlayPart } from '../../../../board/contributor.ts';
import type { OverlayLine, OverlayMark, OverlayText } from '../../../../board/overlay.ts';
import type { OverlaySource } from '../../../../board/overlay-picture.ts';
import { type DetailPlace, WORDS_FROM } from './detail-place.ts';
import { type DetailWords, gapWords, heaveWords, NO_GAP } from './detail-words.ts';

/** What the detail is drawn from; px of the board come from the board. */
export interface DetailSource extends Pick<OverlaySource, 'onBoard' | 'scale' | 'weight' | 'measure'> {
  readonly detail: ArcsDetail;
  readonly place: DetailPlace;
  /** px of the board of a place of the sheet, mm. */
  readonly ofSheet: (place: ViewPoint) => ScreenPoint;
  /** The gap where the car stands; undefined if the axle has no pose there. */
  readonly present: GapTick | undefined;
  readonly words: DetailWords;
}

/** px at weight 1. */
const GRADUATION = 5;
const OFF_LINES = 9;
/** Lines of writing that labelled ticks stand apart at least, and how many are labelled at most. */
const LINES_APART = 1.5;
const LABELLED_MOST = 5;
const ROUND = 96;

function circleLine([x, y]: ScreenPoint, radius: number): number[] {
  return Array.from({ length: ROUND + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / ROUND;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  }).flat();
}

/** Which ticks are labelled: the present one, the travel's ends, then those between from the outside in, as far as there is room. */
export function labelledTicks(
  ticks: readonly GapTick[],
  present: GapTick | undefined,
  down: (tick: GapTick) => number,
  apart: number,
): GapTick[] {
  const within = ticks.filter((tick) => tick.within);
  const outsideIn = [...within].sort((a, b) => Math.abs(b.heave) - Math.abs(a.heave));
  const chosen: GapTick[] = present?.within ? [present] : [];
  for (const tick of outsideIn) {
    if (chosen.length >= LABELLED_MOST) break;
    if (chosen.every((other) => Math.abs(down(other) - down(tick)) >= apart)) chosen.push(tick);
  }
  return chosen;
}

/** The circle in the view with its letter, and beside the view what lies in it, drawn larger. */
export function detailMarks(source: DetailSource): OverlayPart {
  const { detail, place, present, words, weight, scale, measure } = source;
  const circle: DetailCircle = { centre: detail.circle.centre, radius: place.radius };
  const middle = source.ofSheet(place.centre);
  const larger = scale * place.times;
  const radius = larger * place.radius;
  const onDetail = (at: ViewPoint): ScreenPoint => [
    middle[0] + larger * (at[0] - circle.centre[0]),
    middle[1] + larger * (at[1] - circle.centre[1]),
  ];
  const inView = source.onBoard(detail.view, circle.centre);
  const lines: OverlayLine[] = [
    { points: circleLine(inView, scale * place.radius), ink: 'soft' },
    { points: circleLine(middle, radius), ink: 'soft', covers: true },
  ];
  const marks: OverlayMark[] = [];
  const texts: OverlayText[] = [];
  const arcs = (['asked', 'allowed'] as const).flatMap((ink) =>
    clippedToCircle(circle, detail[ink]).map((run) => ({
      points: run.flatMap((at) => [...onDetail(at)]),
      ink,
    })),
  );
  const line = measure('0', false).height;

  const tickPoints = (tick: GapTick) =>
    clippedToCircle(circle, [tick.asked, tick.allowed]).map((run) => run.flatMap((at) => [...onDetail(at)]));
  const ticks = [...detail.ticks, ...(present ? [present] : [])];
  for (const tick of ticks) {
    const [x, y] = onDetail(tick.asked);
    if (Math.hypot(x - middle[0], y - middle[1]) > radius) continue;
    const half = GRADUATION * weight;
    lines.push({ points: [x - half, y, x + half, y], ink: 'ink' });
    for (const points of tickPoints(tick)) lines.push({ points, ink: 'gap' });
  }
  lines.push(...arcs);
  if (present?.within) {
    const [x, y] = onDetail(present.asked);
    const [ax, ay] = onDetail(present.allowed);
    marks.push({ x, y, kind: 'tick' }, { x: ax, y: ay, kind: 'cross' });
  }

  if (radius * 2 >= WORDS_FROM * weight) {
    const drawn = [...arcs.map(({ points }) => points), ...ticks.flatMap(tickPoints)];
    const labelled = labelledTicks(
      detail.ticks,
      present,
      (tick) => onDetail(tick.asked)[1],
      LINES_APART * line,
    );
    for (const tick of labelled) {
      const y = onDetail(tick.asked)[1];
      const extent = reachBetween(drawn, y - line / 2, y + line / 2);
      if (!extent) continue;
      const isPresent = tick === present;
      texts.push(
        {
          x: extent.left - OFF_LINES * weight,
          y,
          text: heaveWords(tick.heave, words),
          ink: isPresent ? 'ink' : 'soft',
          strong: isPresent,
          align: 'right',
        },
        {
          x: extent.right + OFF_LINES * weight,
          y,
          text: gapWords(tick.gap, words),
          ink: isPresent ? (gapWords(tick.gap, words) === NO_GAP ? 'aim' : 'allowed') : 'soft',
          strong: isPresent,
          align: 'left',
        },
      );
    }
  }

  const below = legend(source, middle[0], middle[1] + radius + line);
  return {
    lines: [...lines, ...below.lines],
    marks,
    texts: [...texts, ...below.texts],
    rects: [
      {
        x: middle[0] - radius,
        y: middle[1] - radius - 2 * line,
        width: 2 * radius,
        height: 2 * radius + 5.5 * line,
      },
    ],
    firstNotes: [
      {
        id: 'detail letter',
        view: detail.view,
        x: inView[0],
        y: inView[1],
        clear: scale * place.radius,
        toward: -135,
        lines: [{ text: words.letter, ink: 'ink', strong: true }],
      },
    ],
  };
}

/** px at weight 1: of a line in the key, and between it and its words. */
const SAMPLE = 22;
const BESIDE_SAMPLE = 5;
const BETWEEN = 16;

/** What the lines are and what the signs mean, below the circle. */
function legend(
  { words, weight, measure, detail }: DetailSource,
  x: number,
  y: number,
): { lines: OverlayLine[]; texts: OverlayText[] } {
  const line = measure('0', false).height;
  const centred = (text: string, row: number, ink: OverlayText['ink']): OverlayText => ({
    x,
    y: y + row * line,
    text,
    ink,
    strong: false,
    align: 'center',
  });
  const { none, signs, aside } = words;
  if (detail.asked.length === 0) return { lines: [], texts: [centred(none, 0, 'soft')] };
  const key = [
    { text: 'axle asks', ink: 'asked' },
    { text: 'link allows', ink: 'allowed' },
  ] as const;
  const [sample, beside, between] = [SAMPLE * weight, BESIDE_SAMPLE * weight, BETWEEN * weight];
  const widths = key.map(({ text }) => sample + beside + measure(text, false).width);
  let left = x - (widths.reduce((sum, width) => sum + width, 0) + between) / 2;
  const lines: OverlayLine[] = [];
  const texts: OverlayText[] = [];
  key.forEach(({ text, ink }, i) => {
    lines.push({ points: [left, y, left + sample, y], ink });
    texts.push({ x: left + sample + beside, y, text, ink, strong: false, align: 'left' });
    left += (widths[i] as number) + between;
  });
  texts.push(centred(signs, 1, 'soft'));
  if (aside) texts.push(centred(aside, 2, 'allowed'));
  return { lines, texts };
}

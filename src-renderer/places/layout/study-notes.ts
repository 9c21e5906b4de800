import type { View, ViewPoint } from '../../../shared-math/drawing/index.ts';
import type { FrontEnd } from '../../../shared-math/linkage/index.ts';
import type { Sensitivity } from '../../../shared-math/tune/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { overlap, type Rect } from '../../board/labels.ts';
import type { OverlayLine, OverlayText } from '../../board/overlay.ts';
import type { Note } from '../../board/overlay-picture.ts';
import { type OnBoard, proposedAt } from '../../board/proposed-note.ts';
import { bumpChange, bumpOf } from '../../panels/points/effect-words.ts';
import type { BoxMap } from './map/box-map.svelte.ts';
import { bumpWords } from './map/map-words.ts';

/** What is written on the map: the best spot with its figure. */
export function mapNotes(map: BoxMap, shown: readonly View[], onBoard: OnBoard): Note[] {
  const { answer, view } = map;
  if (!map.shown || !answer?.best || !shown.includes(view)) return [];
  const { across, up, worst } = answer.best;
  const { from, to } = answer.window;
  if (across < from[0] || across > to[0] || up < from[1] || up > to[1]) return [];
  const [x, y] = onBoard(view, [view === 'side' ? -across : across, -up]);
  return [
    {
      id: 'map best',
      view,
      x,
      y,
      clear: 9,
      toward: -60,
      lines: [{ text: `best spot ${bumpWords(worst)}`, ink: 'aim', strong: true }],
    },
  ];
}

/** The name of the proposed car, at its pitman ball. */
export const proposalNotes = (proposed: FrontEnd | undefined, shown: readonly View[], onBoard: OnBoard) =>
  proposedAt(proposed?.layout.steering.box.pitmanBall, shown, onBoard);

/** px at weight 1: where an arrow begins from its point, how long it is, its barbs, and where its figure stands. */
const ARROW = { from: 15, length: 15, barb: 4.5, text: 5 } as const;
/** rad. What is reported as no change has no arrow. */
const LEAST = toRadians(0.005);

/** Which way an axis of the car points in a view. */
const DIRECTIONS: Record<View, readonly (readonly [axis: 0 | 1 | 2, right: number, down: number])[]> = {
  side: [
    [0, -1, 0],
    [2, 0, -1],
  ],
  top: [
    [0, -1, 0],
    [1, 0, 1],
  ],
  front: [
    [1, 1, 0],
    [2, 0, -1],
  ],
};

/** By how many halves of its length an arrow may grow. */
const MORE = 8;

export interface Arrows {
  readonly lines: readonly OverlayLine[];
  readonly texts: readonly OverlayText[];
  /** Where the figures stand, for what else is written. */
  readonly rects: readonly Rect[];
}

/**
 * Small arrows about the chosen point, one for each way it can go in a view, with what a step that way does to bump
 * steer. What makes it less is in steel blue, the rest in soft ink and only where there is room for `all`; the words
 * say which is which. An arrow is longer where its figure would stand on other `words`.
 */
export function effectArrows(
  reported: Sensitivity,
  { view, x: atX, y: atY }: { readonly view: View; readonly x: number; readonly y: number },
  weight: number,
  all: boolean,
  words: readonly Rect[],
  measure: (text: string) => { readonly width: number; readonly height: number },
): Arrows {
  const lines: OverlayLine[] = [];
  const texts: OverlayText[] = [];
  const rects: Rect[] = [];
  for (const [axis, right, down] of DIRECTIONS[view])
    for (const effect of reported.effects) {
      if (effect.axis !== axis) continue;
      const bump = bumpOf(reported, effect);
      if (bump === undefined || Math.abs(bump) < LEAST || (bump > 0 && !all)) continue;
      const [dx, dy] = [right * effect.direction, down * effect.direction];
      const ink = bump < 0 ? 'steel' : 'soft';
      const point = (along: number, aside: number): ViewPoint => [
        atX + (dx * along - dy * aside) * weight,
        atY + (dy * along + dx * aside) * weight,
      ];
      const text = bumpChange(bump);
      const { width, height } = measure(text);
      const align = dx > 0 ? 'left' : dx < 0 ? 'right' : 'center';
      const placed = (tip: number) => {
        const [x, y] = point(tip + ARROW.text + (dy === 0 ? 0 : 5), 0);
        const left = x - { left: 0, right: width, center: width / 2 }[align];
        return { x, y, rect: { x: left, y: y - height / 2, width, height } };
      };
      let tip = ARROW.from + ARROW.length;
      for (let more = 0; more < MORE && words.some((word) => overlap(word, placed(tip).rect)); more += 1)
        tip += ARROW.length / 2;
      const [start, end] = [point(ARROW.from, 0), point(tip, 0)];
      const [left, other] = [
        point(tip - ARROW.barb, ARROW.barb * 0.7),
        point(tip - ARROW.barb, -ARROW.barb * 0.7),
      ];
      lines.push({ points: [...start, ...end], ink }, { points: [...left, ...end, ...other], ink });
      const { x, y, rect } = placed(tip);
      texts.push({ x, y, text, ink, strong: bump < 0, align });
      rects.push(rect);
    }
  return { lines, texts, rects };
}

import { describe, expect, test } from 'vitest';
import { holdTravel } from '../../../../shared-math/aim/index.ts';
import { type ArcsDetail, arcsDetail, ENLARGEMENTS, gapTick } from '../../../../shared-math/detail/index.ts';
import {
  drawLayout,
  joined,
  placeAtRide,
  roomFor,
  viewBoxes,
} from '../../../../shared-math/drawing/index.ts';
import { resolveLayout } from '../../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { formatLength } from '../../../../shared-math/units/index.ts';
import { crosses } from '../../../../src-renderer/board/labels.ts';
import type { OverlayText } from '../../../../src-renderer/board/overlay.ts';
import { detailMarks } from '../../../../src-renderer/places/layout/travel/detail/detail-marks.ts';
import { placeDetail } from '../../../../src-renderer/places/layout/travel/detail/detail-place.ts';
import {
  beyondWords,
  gapWords,
  heaveWords,
  NO_PATH,
  SIGNS,
} from '../../../../src-renderer/places/layout/travel/detail/detail-words.ts';
import { DEMONSTRATIONS } from '../../../support/demonstration-files.ts';

const length = (mm: number) => formatLength(mm, { unit: 'in', fraction: 16 });
const fineLength = (mm: number) => formatLength(mm, { unit: 'in', fraction: 32 });
const lengths = { length, fineLength };
/** A board's type, about: 6 px a letter, 16 px a line. */
const measure = (text: string) => ({ width: 6 * text.length, height: 16 });

const CARS = DEMONSTRATIONS.map(
  ([file, document]) => [file, prepareFrontEnd(resolveLayout(document))] as const,
);

/** Side view at its own origin, front view left of it, as on the sheet. */
function boardOf(frontEnd: (typeof CARS)[number][1], wide: number, high: number) {
  const drawing = drawLayout(frontEnd.layout);
  const placed = roomFor(drawing);
  placeAtRide(drawing, placed);
  const boxes = viewBoxes(drawing, placed);
  const ahead = boxes.side.left - 100 - boxes.front.right;
  const front = { ...boxes.front, left: boxes.front.left + ahead, right: boxes.front.right + ahead };
  const top = { ...boxes.top, top: boxes.side.top - 2000, bottom: boxes.side.top - 100 };
  const all = [front, top].reduce(joined, boxes.side);
  const scale = Math.min(wide / (all.right - all.left), high / (all.bottom - all.top));
  return { side: boxes.side, front, top, all, scale, ahead };
}

const SIZES = [
  [900, 380],
  [1040, 460],
  [1500, 900],
] as const;

describe('where the detail stands', () => {
  test.each(CARS)('of %s: beside its view and clear of all of them, at a standard scale', (_, frontEnd) => {
    const detail = arcsDetail(holdTravel(frontEnd), 'in');
    for (const [width, height] of SIZES) {
      const { side, front, top, all, scale } = boardOf(frontEnd, width, height);
      const own = detail.view === 'side' ? side : front;
      const place = placeDetail({
        view: detail.view as 'side' | 'front',
        radius: detail.circle.radius,
        own,
        all,
        size: { width, height },
        scale,
        weight: 1,
      });
      expect(ENLARGEMENTS).toContain(place.times);
      expect(place.radius).toBeLessThanOrEqual(detail.circle.radius);
      for (const view of [side, front, top]) {
        const apart =
          place.box.left > view.right ||
          place.box.right < view.left ||
          place.box.top > view.bottom ||
          place.box.bottom < view.top;
        expect(apart).toBe(true);
      }
      // The circle lies in what was asked for.
      const reach = place.times * place.radius;
      expect(place.centre[0] - reach).toBeGreaterThanOrEqual(place.box.left - 1e-6);
      expect(place.centre[0] + reach).toBeLessThanOrEqual(place.box.right + 1e-6);
      expect(place.box.bottom).toBe(own.bottom);
    }
  });
});

function marksOf(
  frontEnd: (typeof CARS)[number][1],
  heave: number,
  size: readonly [number, number],
  radius?: number,
) {
  const whole = arcsDetail(holdTravel(frontEnd), 'in');
  const { side, front, all, scale } = boardOf(frontEnd, size[0], size[1]);
  const place = placeDetail({
    view: whole.view as 'side' | 'front',
    radius: radius ?? whole.circle.radius,
    own: whole.view === 'side' ? side : front,
    all,
    size: { width: size[0], height: size[1] },
    scale,
    weight: 1,
  });
  const circle = { ...whole.circle, radius: place.radius };
  const detail: ArcsDetail = {
    ...whole,
    circle,
    ticks: whole.ticks.map((tick) => gapTick(frontEnd, { view: whole.view, circle }, tick.heave) ?? tick),
  };
  const present = gapTick(frontEnd, detail, heave);
  const marks = detailMarks({
    detail,
    place,
    present,
    scale,
    weight: 1,
    measure,
    onBoard: (_view, [x, y]) => [scale * x, scale * y],
    ofSheet: ([x, y]) => [scale * x, scale * y],
    words: {
      letter: 'A',
      ...lengths,
      none: NO_PATH,
      signs: SIGNS,
      aside: beyondWords(detail.ticks, lengths),
    },
  });
  return { detail, present, place, marks };
}

function rectOf({ x, y, text, align }: OverlayText) {
  const { width, height } = measure(text);
  const left = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
  return { x: left, y: y - height / 2 + 2, width, height: height - 4 };
}

describe('what is written at the ticks', () => {
  test.each(CARS)('of %s: no line runs through it, and none stands on another', (_, frontEnd) => {
    const { bump, rebound: droop } = frontEnd.layout.travel;
    for (const size of SIZES)
      for (const heave of [0, bump, -droop, 0.37 * bump]) {
        const { marks, present } = marksOf(frontEnd, heave, size);
        const texts = (marks.texts ?? []).map((text) => ({ text, rect: rectOf(text) }));
        expect(texts.map(({ text }) => text.text)).toContain(heaveWords(heave, lengths));
        expect(texts.map(({ text }) => text.text)).toContain(gapWords(present?.gap ?? Number.NaN, lengths));
        const arcs = (marks.lines ?? []).filter(
          ({ ink }) => ink === 'asked' || ink === 'allowed' || ink === 'gap',
        );
        for (const { text, rect } of texts) {
          for (const { points } of arcs)
            for (let i = 2; i + 1 < points.length; i += 2)
              expect(
                crosses(rect, points[i - 2]!, points[i - 1]!, points[i]!, points[i + 1]!),
                `${text.text} at heave ${heave}`,
              ).toBe(false);
          for (const other of texts) {
            if (other.rect === rect) continue;
            const apart =
              rect.x >= other.rect.x + other.rect.width ||
              other.rect.x >= rect.x + rect.width ||
              rect.y >= other.rect.y + other.rect.height ||
              other.rect.y >= rect.y + rect.height;
            expect(apart, `${text.text} and ${other.text.text}`).toBe(true);
          }
        }
      }
  });

  test('what lies beyond the circle is said, with the largest gap of it, and not drawn', () => {
    const [, frontEnd] = CARS.find(([file]) => file.startsWith('hairpins-box-too-low'))!;
    const { marks, detail, place } = marksOf(frontEnd, 0, SIZES[1], 40);
    expect(detail.ticks.filter(({ within }) => !within).length).toBeGreaterThan(1);
    const said = marks.texts?.find(({ text }) => text.startsWith('beyond the circle'))?.text ?? '';
    const most = detail.ticks.reduce((a, b) => (Math.abs(b.gap) > Math.abs(a.gap) ? b : a));
    expect(said).toBe(
      `beyond the circle: ${gapWords(most.gap, lengths)} at ${heaveWords(most.heave, lengths)}`,
    );
    const scale = boardOf(frontEnd, SIZES[1][0], SIZES[1][1]).scale;
    const [cx, cy] = [scale * place.centre[0], scale * place.centre[1]];
    for (const { points } of (marks.lines ?? [])
      .filter(({ ink }) => ink === 'asked' || ink === 'allowed')
      .slice(0, 2))
      for (let i = 0; i < points.length; i += 2)
        expect(Math.hypot(points[i]! - cx, points[i + 1]! - cy)).toBeLessThanOrEqual(
          scale * place.times * place.radius + 1e-6,
        );
  });
});

test('gaps and heaves are written with their sign and their way', () => {
  expect(gapWords(25.4 / 4, lengths)).toBe('+1/4 in');
  expect(gapWords(-25.4 / 32, lengths)).toBe('−1/32 in');
  expect(gapWords(0, lengths)).toBe('no gap');
  // What the reader's own smallest step would round away is no nothing.
  expect(gapWords(0.1, lengths)).toMatch(/^under 1\/\d+ in$/);
  expect(gapWords(-0.1, lengths)).toMatch(/^under 1\/\d+ in$/);
  expect(heaveWords(0, lengths)).toBe('ride height');
  expect(heaveWords(-76.2, lengths)).toBe('3 in droop');
});

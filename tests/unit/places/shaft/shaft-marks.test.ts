import { describe, expect, test } from 'vitest';
import { VIEWS, type View } from '../../../../shared-math/drawing/index.ts';
import { routeOf } from '../../../../shared-math/shaft/index.ts';
import { type ShaftPictureSource, shaftPicture } from '../../../../src-renderer/places/shaft/shaft-marks.ts';
import { DEGREE, expectClose } from '../../../support/close.ts';
import { shaftOf } from '../../../support/shafts.ts';

const shaft = shaftOf();
const angles = routeOf(shaft).joints.map(({ angle }) => angle);

function picture(limit: number, over: Partial<ShaftPictureSource> = {}) {
  return shaftPicture({
    route: routeOf(shaft, { single: limit, double: limit }),
    shown: VIEWS,
    chosen: null,
    hovered: null,
    chosenView: 'side',
    hoverView: 'side',
    weight: 1,
    onBoard: (_: View, [right, down]) => [0.4 * right, 0.4 * down],
    ...over,
  });
}

describe('what the joints say on the board', () => {
  test('within their limits and not looked at: nothing; without a shaft neither', () => {
    expect(picture(89 * DEGREE)).toEqual({ lines: [], marks: [], notes: [] });
    expect(picture(1, { route: undefined, chosen: 'shaft.joints.0.centre' }).notes).toEqual([]);
  });

  test('past its limit a joint has a cross in every view that shows, and its angle with the limit once', () => {
    const limit = (angles[0]! + angles[1]!) / 2;
    const { marks, notes } = picture(limit);
    expect(marks.map(({ kind }) => kind)).toEqual(['stop', 'stop', 'stop']);
    expect(notes.map(({ view }) => view)).toEqual(['side']);
    expect(notes[0]!.lines[0]!.text).toMatch(/^\d+\.\d°, limit \d+°$/);
    expect(picture(limit, { shown: ['top'] }).marks.length).toBe(1);
  });

  test('chosen it tells the true angle and that of the view, and the arc spans what the view shows', () => {
    const { lines, notes } = picture(89 * DEGREE, { chosen: 'shaft.joints.1.centre' });
    const { apparent, angle } = routeOf(shaft).joints[1]!;
    const degrees = (radians: number) => `${(radians / DEGREE).toFixed(1)}°`;
    expect(notes[0]!.lines.map(({ text }) => text)).toEqual([
      `${degrees(angle)} true`,
      `${degrees(apparent.side!)} in this view`,
    ]);
    const [leg, arc] = lines as [(typeof lines)[0], (typeof lines)[0]];
    const [x, y] = leg.points as [number, number];
    const way = (at: number) => Math.atan2(arc.points[at + 1]! - y, arc.points[at]! - x);
    const spanned = Math.abs(way(0) - way(arc.points.length - 2));
    expectClose(Math.min(spanned, 2 * Math.PI - spanned), apparent.side!, 1e-9);
  });
});

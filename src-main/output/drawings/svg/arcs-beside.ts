import type { ArcsDetail } from '../../../../shared-math/detail/index.ts';
import { circleInView, drawDetail, drawKey, NO_ARCS } from '../../pages/sheet/arcs-page.ts';
import type { SheetModel } from '../../pages/sheet-model.ts';
import type { Standing } from '../../pens/balloons.ts';
import type { CarView } from '../../pens/car-view.ts';
import type { Area } from '../../pens/papers.ts';
import { BODY } from '../../pens/styles.ts';
import type { SvgPen } from '../../pens/svg-pen.ts';
import { brokenInto, writeLines } from '../../pens/text-lines.ts';

// The detail of the arcs on a plate, beside the view that its circle is in.

/** mm from the views to the detail, how wide it is, how far its key stands below it and how high that is. */
const OFF_VIEWS = 8;
const WIDE = 124;
const OFF_KEY = 5;
const KEY_HIGH = 40;
/** mm that it may be high: a higher one would stand far off its view. */
const MOST_HIGH = 200;

/** mm that the detail takes beside the views. */
export const BESIDE_ARCS = OFF_VIEWS + WIDE;

/** The circle with its letter off the numbers, in a group with its id: `side-arcs`. */
export function arcsInView(
  pen: SvgPen,
  view: CarView,
  detail: ArcsDetail,
  numbers: readonly Standing[],
): void {
  if (detail.asked.length > 0) pen.named(`${view.view}-arcs`, () => circleInView(pen, view, detail, numbers));
}

/** The detail with its key in a group of its own, at the left of an area whose height it may take; or that there are no arcs. */
export function arcsBeside(
  pen: SvgPen,
  model: SheetModel,
  detail: ArcsDetail,
  { x, y, height }: Pick<Area, 'x' | 'y' | 'height'>,
): void {
  const left = x + OFF_VIEWS;
  pen.named('arcs-detail', () => {
    if (detail.asked.length === 0) {
      writeLines(pen, brokenInto(pen, NO_ARCS, BODY, WIDE), left, y, BODY);
      return;
    }
    const high = Math.min(MOST_HIGH, height - OFF_KEY - KEY_HIGH);
    drawDetail(pen, model, detail, { x: left, y, width: WIDE, height: high });
    drawKey(pen, left, y + high + OFF_KEY, WIDE);
  });
}

import type { Box } from '../../../shared-math/drawing/index.ts';
import type { Mark } from './pictorial-marks.ts';
import type { Align } from './print-pen.ts';

// Marks as the paths of an SVG whose unit is a millimetre of the car, in markup and by script alike. No letter in an attribute
// comes from outside: they are numbers, and colours of the sheet.

/** The sheet's widths are of paper at about 1:8; on a page the picture is as wide as it is, and they are a share of that. */
const PAPER_WIDTH = 260;

/** The viewBox of a picture. */
export function frameWords({ left, top, right, bottom }: Box): string {
  return [left, top, right - left, bottom - top].map((each) => Math.round(each)).join(' ');
}

/** A millimetre of paper in units of the picture. */
export function paperUnit({ left, right }: Box): number {
  return (right - left) / PAPER_WIDTH;
}

/** The size of the word at the front, in units of the picture. */
export const frontSize = (box: Box) => Math.round(4.6 * paperUnit(box));

/** By which end a word is set, in the words of SVG. */
export const ANCHORS: Readonly<Record<Align, string>> = { left: 'start', centre: 'middle', right: 'end' };

function pathOf(points: readonly number[], closed: boolean): string {
  let path = '';
  for (let i = 0; i < points.length; i += 2)
    path += `${i === 0 ? 'M' : 'L'}${Math.round(points[i] as number)} ${Math.round(points[i + 1] as number)}`;
  return closed ? `${path}Z` : path;
}

/** The attributes of a mark's path. */
export function markAttributes({ points, closed, fill, line }: Mark, box: Box): Record<string, string> {
  const unit = paperUnit(box);
  return {
    d: pathOf(points, closed),
    fill: fill ?? 'none',
    stroke: line?.colour ?? 'none',
    'stroke-width': String(line ? Math.round(10 * line.width * unit) / 10 : 0),
    'stroke-dasharray': line?.dash ? line.dash.map((each) => Math.round(each * unit)).join(' ') : 'none',
  };
}

import { ATTENTION, INK, SOFT, STEEL } from './colours.ts';
import type { StrokeStyle, TextStyle } from './print-pen.ts';

// The sheet's type and lines, in one place. Sizes in points, widths in mm.

export const TITLE: TextStyle = { face: 'headingBold', size: 17, colour: INK };
export const HEADING: TextStyle = { face: 'headingBold', size: 12, colour: INK };
export const BODY: TextStyle = { face: 'regular', size: 8.4, colour: INK };
export const BODY_SOFT: TextStyle = { ...BODY, colour: SOFT };
export const BODY_BOLD: TextStyle = { ...BODY, face: 'bold' };
export const SMALL: TextStyle = { face: 'regular', size: 7.2, colour: SOFT };
export const SMALL_INK: TextStyle = { ...SMALL, colour: INK };
export const LABEL: TextStyle = { face: 'heading', size: 7, colour: SOFT };
export const COLUMN: TextStyle = { face: 'heading', size: 8, colour: SOFT };
export const FIGURE: TextStyle = { face: 'headingBold', size: 24, colour: INK };
export const DIMENSION: TextStyle = { face: 'heading', size: 8.2, colour: INK };
export const WARNING: TextStyle = { face: 'bold', size: 7.6, colour: INK };
export const WARNING_SIGN: TextStyle = { face: 'headingBold', size: 9, colour: ATTENTION };
export const LINK_NAME: TextStyle = { ...BODY_BOLD, colour: STEEL };

export const BORDER: StrokeStyle = { width: 0.5, colour: INK, cap: 'square' };
export const CELL: StrokeStyle = { width: 0.2, colour: INK, cap: 'butt' };
export const HAIR: StrokeStyle = { width: 0.12, colour: SOFT, cap: 'butt' };
export const ROW_RULE: StrokeStyle = { width: 0.12, colour: '#b9b09a', cap: 'butt' };

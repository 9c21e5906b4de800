import type { Reply, Request } from '../../../src-main/api/contract.ts';

// What can leave the board, in the order in which a builder wants it.

type OutputRequest = Request<'output.start'>['wish'];
type DrawingRequest = Extract<OutputRequest, { kind: 'drawing' }>;

export type GoingOut = 'sheet' | 'templates' | 'customer' | 'measuring' | 'drawing' | 'curves' | 'data';
export type Paper = Extract<OutputRequest, { kind: 'print' }>['paper'];
export type ViewDrawn = Extract<DrawingRequest['view'], 'side' | 'top' | 'front' | '3d'>;
export type CurveDrawn = Exclude<DrawingRequest['view'], ViewDrawn>;
export type DrawnFormat = DrawingRequest['format'];
export type DataKind = Extract<OutputRequest, { kind: 'table' }>['table'] | 'layout' | 'car';

export interface GoingOutWords {
  readonly id: GoingOut;
  readonly name: string;
  readonly about: string;
  readonly make: string;
}

export const GOING_OUT: readonly GoingOutWords[] = [
  {
    id: 'sheet',
    name: 'Build sheet',
    about: 'To hang over the bench: views with their distances, links, box, curves, shaft, findings, checks.',
    make: 'Make the build sheet',
  },
  {
    id: 'templates',
    name: 'Templates at full size',
    about: 'Arms, bracket holes and shaft ends, to lay on the metal.',
    make: 'Make the templates',
  },
  {
    id: 'customer',
    name: 'Customer’s copy',
    about: 'One page: the picture, three figures and the cautions, in plain words.',
    make: 'Make the customer’s copy',
  },
  {
    id: 'measuring',
    name: 'Measuring sheet',
    about: 'To take to the car: what to measure, where and with what, and a blank for each figure.',
    make: 'Make the measuring sheet',
  },
  {
    id: 'drawing',
    name: 'Drawing',
    about: 'A view to scale, or the points in space, for other programs.',
    make: 'Make the drawing',
  },
  {
    id: 'curves',
    name: 'Curves',
    about: 'Steer, toe and the steering sweep as a picture.',
    make: 'Make the curves',
  },
  {
    id: 'data',
    name: 'Data',
    about: 'Figures for a spreadsheet; the layout or the whole car to take along.',
    make: 'Make the file',
  },
];

export const PAPER_CHOICES: readonly (readonly [Paper, string])[] = [
  ['letter', 'US letter'],
  ['a4', 'A4'],
];

export const UNIT_CHOICES = [
  ['in', 'Inches'],
  ['mm', 'Millimetres'],
] as const;

export const VIEW_CHOICES: readonly (readonly [ViewDrawn, string])[] = [
  ['side', 'Side view'],
  ['top', 'Top view'],
  ['front', 'Front view'],
  ['3d', 'Points and links in space'],
];

export const CURVE_CHOICES: readonly (readonly [CurveDrawn, string])[] = [
  ['curves', 'All three'],
  ['steer', 'Bump steer'],
  ['toe', 'Total toe-in'],
  ['turn', 'Steering sweep'],
];

const FORMAT_WORDS: Record<DrawnFormat, string> = {
  dxf: 'DXF, full size',
  svg: 'SVG, vectors',
  png: 'PNG, a picture',
};

/** The formats that a drawing or curve can have. */
export function formatChoices(view: ViewDrawn | CurveDrawn): readonly (readonly [DrawnFormat, string])[] {
  const curves = CURVE_CHOICES.some(([curve]) => curve === view);
  const formats: readonly DrawnFormat[] =
    view === '3d' ? ['dxf'] : curves ? ['svg', 'png'] : ['dxf', 'svg', 'png'];
  return formats.map((format) => [format, FORMAT_WORDS[format]] as const);
}

export const DATA_CHOICES: readonly (readonly [DataKind, string])[] = [
  ['points', 'Points (CSV)'],
  ['travel', 'Travel sweep (CSV)'],
  ['turn', 'Steering sweep (CSV)'],
  ['map', 'Map of the pitman ball (CSV)'],
  ['layout', 'This layout (JSON)'],
  ['car', 'Whole car (JSON)'],
];

/** What a file of data holds, in a sentence. */
export const DATA_ABOUT: Record<DataKind, string> = {
  points: 'Every point at ride height: millimetres, x forward, y left, z up.',
  travel: 'Wheel angles, bump steer and axle pose over the travel: millimetres and degrees.',
  turn: 'Wheel angles, ratio and Ackermann through the whole turn: degrees.',
  map: 'Worst bump steer for the pitman ball at 64 by 64 places: millimetres and degrees.',
  layout: 'The layout as a document that Toeboard reads again, here or in another shop.',
  car: 'All variants of the car with their photos in one file that Toeboard reads again.',
};

/** What to heed with each, before metal is cut. */
export const HEED: Partial<Record<GoingOut, string>> = {
  sheet: 'A sheet is no approval. Measure on the car before you cut, and again before you weld.',
  templates:
    'Print at 100 %, never “fit to page”, and lay a rule on the check rule of every page before you cut.',
  customer: 'It tells what was drawn, not what was built: hand it over with the finished car’s own figures.',
  measuring:
    'Put the car on stands that cannot tip, its tyres on level ground or at ride height, before you crawl under.',
  drawing:
    'Points and lengths are as drawn. Check one known length in the other program before you cut from it.',
};

/** "The build sheet is being made: side view, 3 of 10." */
export function progressWords({ state, done, of, what }: Reply<'output.progress'>): string {
  if (state === 'waiting') return 'Waiting for what is made before it…';
  return of > 0 ? `${what}, ${done} of ${of}` : 'Being made…';
}

/** "214 kB". */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  return bytes < 1e6 ? `${Math.round(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}

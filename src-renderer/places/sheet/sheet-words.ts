import type { Reply, Request } from '../../../src-main/api/contract.ts';

// What can leave the board, in the order in which a builder wants it.

type OutputRequest = Request<'output.start'>['wish'];
type DrawingRequest = Extract<OutputRequest, { kind: 'drawing' }>;

type PrintRequest = Extract<OutputRequest, { kind: 'print' }>;
/** Each print for itself, views and curves, and files of data. */
export type GoingOut = PrintRequest['print'] | 'moving' | 'film' | 'drawing' | 'curves' | 'data';
export type Paper = PrintRequest['paper'];
export type RoomShown = NonNullable<PrintRequest['rooms']>[number];
export type ViewDrawn = Extract<
  DrawingRequest['view'],
  'side' | 'top' | 'front' | 'views' | 'pictorial' | 'templates' | '3d'
>;
export type CurveDrawn = Exclude<DrawingRequest['view'], ViewDrawn>;
export type DrawnFormat = DrawingRequest['format'];
export type DataKind = Extract<OutputRequest, { kind: 'table' }>['table'] | 'layout' | 'car';

export interface GoingOutWords {
  readonly name: string;
  readonly about: string;
  readonly make: string;
  /** What to heed with it, before metal is cut. */
  readonly heed?: string;
}

/** What can be chosen, in its order. The compiler asks for whatever the host can make. */
export const GOING_OUT: Readonly<Record<GoingOut, GoingOutWords>> = {
  sheet: {
    name: 'Build sheet',
    about: 'To hang over the bench: views with their distances, links, box, curves, shaft, findings, checks.',
    make: 'Make the build sheet',
    heed: 'A sheet is no approval. Measure on the car before you cut, and again before you weld.',
  },
  templates: {
    name: 'Templates at full size',
    about: 'Arms, bracket holes and shaft ends, to lay on the metal.',
    make: 'Make the templates',
    heed: 'Print at 100 %, never “fit to page”, and lay a rule on the check rule of every page before you cut.',
  },
  customer: {
    name: 'Customer’s copy',
    about: 'One page: the picture, three figures and the cautions, in plain words.',
    make: 'Make the customer’s copy',
    heed: 'It tells what was drawn, not what was built: hand it over with the finished car’s own figures.',
  },
  moving: {
    name: 'Page that moves',
    about:
      'One file for a phone or a computer: the car in space, moved by sliders, with its figures and cautions.',
    make: 'Make the page that moves',
    heed: 'It tells what was drawn, not what was built: hand it over with the finished car’s own figures.',
  },
  film: {
    name: 'Film of the travel',
    about: 'The car in space going through its travel, to send with a message.',
    make: 'Make the film',
  },
  measuring: {
    name: 'Measuring sheet',
    about: 'To take to the car: what to measure, where and with what, and a blank for each figure.',
    make: 'Make the measuring sheet',
    heed: 'Put the car on stands that cannot tip, its tyres on level ground or at ride height, before you crawl under.',
  },
  drawing: {
    name: 'Drawing',
    about: 'A view to scale, or the points in space, for other programs.',
    make: 'Make the drawing',
    heed: 'Points and lengths are as drawn. Check one known length in the other program before you cut from it.',
  },
  curves: {
    name: 'Curves',
    about: 'Steer, toe and the steering sweep as a picture.',
    make: 'Make the curves',
  },
  data: {
    name: 'Data',
    about: 'Figures for a spreadsheet; the layout or the whole car to take along.',
    make: 'Make the file',
  },
};

export const ROOM_CHOICES: readonly (readonly [RoomShown, string])[] = [
  ['tyre', 'tyre'],
  ['drag-link', 'drag link'],
  ['tie-rod', 'tie rod'],
];
/** The drawn views that can show it. */
export const ROOM_VIEWS: ReadonlySet<ViewDrawn> = new Set<ViewDrawn>(['side', 'top', 'front', 'views']);
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
  ['views', 'All three views'],
  ['pictorial', 'Pictorial, in space'],
  ['templates', 'Templates for a cutting table'],
  ['3d', 'Points and links in space'],
];

export type NumbersWritten = NonNullable<Extract<OutputRequest, { kind: 'table' }>['numbers']>;

export const NUMBER_CHOICES: readonly (readonly [NumbersWritten, string])[] = [
  ['data', 'whole, for programs'],
  ['point', 'for a spreadsheet: 1.5'],
  ['comma', 'for a spreadsheet: 1,5'],
];

export const CURVE_CHOICES: readonly (readonly [CurveDrawn, string])[] = [
  ['curves', 'All three'],
  ['steer', 'Bump steer'],
  ['toe', 'Total toe-in'],
  ['turn', 'Steering sweep'],
];

type FilmRequest = Extract<OutputRequest, { kind: 'film' }>;
export type Filmed = FilmRequest['over'];
export type FilmWidth = FilmRequest['width'];
export type FilmSeconds = FilmRequest['seconds'];

export const FILM_CHOICES: readonly (readonly [Filmed, string])[] = [
  ['bump', 'Bump and droop'],
  ['roll', 'Roll'],
  ['steering', 'Lock to lock'],
];

export const WIDTH_CHOICES: readonly (readonly [`${FilmWidth}`, string])[] = [
  ['480', '480 px across'],
  ['720', '720 px across'],
  ['1080', '1080 px across'],
];

export const SECONDS_CHOICES: readonly (readonly [`${FilmSeconds}`, string])[] = [
  ['2', '2 seconds'],
  ['4', '4 seconds'],
  ['8', '8 seconds'],
];

/** From where a pictorial is seen: degrees from ahead toward the car's left. */
export const SEEN_CHOICES: readonly (readonly [string, string])[] = [
  ['45', 'ahead and its left'],
  ['-45', 'ahead and its right'],
  ['135', 'behind and its left'],
  ['-135', 'behind and its right'],
];

const FORMAT_WORDS: Record<DrawnFormat, string> = {
  dxf: 'DXF, full size',
  svg: 'SVG, vectors',
  png: 'PNG, a picture',
};

/** The formats that a drawing or curve can have. */
export function formatChoices(view: ViewDrawn | CurveDrawn): readonly (readonly [DrawnFormat, string])[] {
  const curves = CURVE_CHOICES.some(([curve]) => curve === view);
  const pictures = curves || view === 'pictorial';
  const formats: readonly DrawnFormat[] =
    view === '3d' || view === 'templates' ? ['dxf'] : pictures ? ['svg', 'png'] : ['dxf', 'svg', 'png'];
  return formats.map((format) => [format, FORMAT_WORDS[format]] as const);
}

/** The files of data, in their order: what each is called and what it holds. The compiler asks for every table. */
export const DATA: Readonly<Record<DataKind, { readonly name: string; readonly about: string }>> = {
  points: {
    name: 'Points (CSV)',
    about: 'Every point at ride height: millimetres, x forward, y left, z up.',
  },
  travel: {
    name: 'Travel sweep (CSV)',
    about: 'Wheel angles, bump steer and axle pose over the travel: millimetres and degrees.',
  },
  turn: {
    name: 'Steering sweep (CSV)',
    about: 'Wheel angles, ratio, Ackermann and what brings the wheels back through the whole turn: degrees.',
  },
  braking: {
    name: 'Braking (CSV)',
    about: 'Loads, wind-up of the axle, caster and steer over grip: newtons, newton metres and degrees.',
  },
  forces: {
    name: 'Link forces (CSV)',
    about:
      'What links, balls and shafts take parked, with the box at its most, and braked: newtons, newton metres and degrees.',
  },
  map: {
    name: 'Map of the pitman ball (CSV)',
    about: 'Worst bump steer for the pitman ball at 64 by 64 places: millimetres and degrees.',
  },
  layout: {
    name: 'This layout (JSON)',
    about: 'The layout as a document that Toeboard reads again, here or in another shop.',
  },
  car: {
    name: 'Whole car (JSON)',
    about: 'All variants of the car with their photos in one file that Toeboard reads again.',
  },
};

export const DATA_CHOICES = (Object.keys(DATA) as DataKind[]).map((kind) => [kind, DATA[kind].name] as const);

/** "The build sheet is being made: side view, 3 of 10." */
export function progressWords({ state, done, of, what }: Reply<'output.progress'>): string {
  if (state === 'waiting') return 'Waiting for what is made before it…';
  return of > 0 ? `${what}, ${done} of ${of}` : 'Making it…';
}

/** "214 kB". */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  return bytes < 1e6 ? `${Math.round(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}

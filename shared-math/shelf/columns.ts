import type { PartKind } from './part-schema.ts';

// Every figure of every kind of part, once: what it is called, where it stands, what it holds, and when it is asked.
// The table file's columns, the fields on screen and the refusals all read this table.

export type Choices = readonly (readonly [value: string, words: string])[];

/** `pitch` is mm from thread to thread, or threads per inch. */
export type Holding = 'text' | 'number' | 'whole' | 'length' | 'pitch' | 'degrees' | Choices;

export interface ShelfColumn {
  /** Plain words, without the unit: "bore of end 1". */
  readonly title: string;
  /** Where the value stands in the part: "ends.0.bore". */
  readonly path: string;
  readonly holds: Holding;
  readonly kinds: readonly PartKind[];
  readonly optional?: true;
  /** Asked only where the value at a path is one of these. */
  readonly when?: readonly [path: string, values: readonly string[]];
}

/** What one of each kind is called, and many of them, in the order in which they are shown. */
const NAMES: Readonly<Record<PartKind, readonly [one: string, many: string]>> = {
  box: ['steering box', 'Steering boxes'],
  joint: ['joint', 'Joints'],
  stock: ['shaft stock', 'Shaft stock'],
  support: ['support bearing', 'Support bearings'],
  'rod-end': ['rod end', 'Rod ends'],
  arm: ['arm', 'Arms'],
};

export const PART_KINDS = Object.keys(NAMES) as readonly PartKind[];

export const KIND_WORDS: readonly (readonly [kind: PartKind, one: string, many: string])[] = PART_KINDS.map(
  (kind) => [kind, ...NAMES[kind]],
);

const SPLINE_FORMS: Choices = [
  ['involute-30', 'involute 30°'],
  ['involute-37.5', 'involute 37.5°'],
  ['involute-45', 'involute 45°'],
  ['metric-30', 'metric involute 30°'],
  ['metric-37.5', 'metric involute 37.5°'],
  ['metric-45', 'metric involute 45°'],
  ['reference-30', 'involute 30° to a reference diameter'],
  ['serrated', 'serrated'],
  ['unidentified', 'not identified'],
];
export const END_WORDS: Choices = [
  ['weld', 'round bore to weld'],
  ['double-d-set-screw', 'double-D with set screw'],
  ['double-d-pinch-bolt', 'double-D with pinch bolt'],
  ['spline-pinch-bolt', 'spline with pinch bolt'],
  ['spline', 'spline'],
];
export const STOCK_WORDS: Choices = [
  ['round', 'solid round'],
  ['double-d-end', 'round with double-D end'],
  ['double-d', 'double-D full length'],
  ['splined', 'splined'],
];

type Extra = Omit<ShelfColumn, 'title' | 'path' | 'holds' | 'kinds'>;

function column(
  kinds: readonly PartKind[],
  title: string,
  path: string,
  holds: Holding,
  extra: Extra = {},
): ShelfColumn {
  return { title, path, holds, kinds, ...extra };
}

const OPTIONAL = { optional: true } as const;

/** A spline that a part may have: all of it is left out where its form is. */
function splineOf(kind: PartKind, title: string, path: string): ShelfColumn[] {
  const given = { when: [`${path}.form`, SPLINE_FORMS.map(([value]) => value)] } as const;
  return [
    column([kind], `${title} spline`, `${path}.form`, SPLINE_FORMS, OPTIONAL),
    column([kind], `${title} teeth`, `${path}.teeth`, 'whole', given),
    column([kind], `${title} pitch`, `${path}.pitch`, 'number', { ...OPTIONAL, ...given }),
    column([kind], `${title} module`, `${path}.module`, 'number', { ...OPTIONAL, ...given }),
    column([kind], `${title} diameter`, `${path}.diameter`, 'length', given),
  ];
}

/** One of a joint's two ends. */
function endOf(index: 0 | 1): ShelfColumn[] {
  const [at, name] = [`ends.${index}`, `end ${index + 1}`];
  const where = (...values: string[]) => ({ when: [`${at}.kind`, values] as const });
  const flats = ['double-d-set-screw', 'double-d-pinch-bolt'];
  const splined = ['spline-pinch-bolt', 'spline'];
  const bolt = { ...OPTIONAL, ...where('double-d-pinch-bolt', 'spline-pinch-bolt') };
  const screw = { ...OPTIONAL, ...where('double-d-set-screw', 'spline') };
  const end = (title: string, path: string, holds: Holding, extra: Extra = {}) =>
    column(['joint'], `${name}${title && ` ${title}`}`, `${at}.${path}`, holds, extra);
  return [
    end('', 'kind', END_WORDS),
    end('bore', 'bore', 'length', where('weld', ...flats)),
    end('across flats', 'acrossFlats', 'length', where(...flats)),
    end('spline', 'form', SPLINE_FORMS, where(...splined)),
    end('teeth', 'teeth', 'whole', where(...splined)),
    end('pitch', 'pitch', 'number', { ...OPTIONAL, ...where(...splined) }),
    end('module', 'module', 'number', { ...OPTIONAL, ...where(...splined) }),
    end('diameter', 'diameter', 'length', where(...splined)),
    end('depth of bore', 'depth', 'length', OPTIONAL),
    end('face to centre', 'reach', 'length', OPTIONAL),
    end('bolt', 'bolt.diameter', 'length', bolt),
    end('bolt from face', 'bolt.fromFace', 'length', bolt),
    end('bolt from axis', 'bolt.offset', 'length', bolt),
    end('screw', 'screw.diameter', 'length', screw),
    end('screw from face', 'screw.fromFace', 'length', screw),
  ];
}

const stockWhen = (...values: string[]) => ({ when: ['stock.kind', values] as const });
const slips = { ...OPTIONAL, ...stockWhen('double-d', 'splined') };

/** In the order of a table's columns; `kind` stands first and is not among them. */
export const COLUMNS: readonly ShelfColumn[] = [
  column(PART_KINDS, 'name', 'name', 'text'),
  column(PART_KINDS, 'how many', 'count', 'whole', OPTIONAL),
  column(PART_KINDS, 'price', 'price', 'number', OPTIONAL),
  column(PART_KINDS, 'note', 'note', 'text', OPTIONAL),

  column(['box'], 'mounting', 'mounting', [
    ['side', 'side'],
    ['cross', 'cross'],
  ]),
  column(['box'], 'assistance', 'assist', [
    ['manual', 'manual'],
    ['power', 'power'],
  ]),
  column(['box'], 'ratio', 'ratio', 'number'),
  column(['box'], 'sector travel each way', 'sectorTravel', 'degrees'),
  column(['box'], 'turns at the arm with handwheel left', 'turns', [
    ['clockwise', 'clockwise'],
    ['counter-clockwise', 'counter-clockwise'],
  ]),
  ...splineOf('box', 'input', 'input'),
  ...splineOf('box', 'sector', 'sector'),
  column(['box'], 'box length', 'size.0', 'length', OPTIONAL),
  column(['box'], 'box width', 'size.1', 'length', OPTIONAL),
  column(['box'], 'box height', 'size.2', 'length', OPTIONAL),

  column(['joint'], 'joint', 'joint', [
    ['single', 'single'],
    ['double', 'double'],
  ]),
  column(['joint'], 'angle limit', 'limit', 'degrees', OPTIONAL),
  ...endOf(0),
  ...endOf(1),

  column(['stock'], 'stock', 'stock.kind', STOCK_WORDS),
  column(['stock'], 'stock diameter', 'stock.diameter', 'length'),
  column(
    ['stock'],
    'stock across flats',
    'stock.acrossFlats',
    'length',
    stockWhen('double-d-end', 'double-d'),
  ),
  column(['stock'], 'stock spline', 'stock.form', SPLINE_FORMS, stockWhen('splined')),
  column(['stock'], 'stock teeth', 'stock.teeth', 'whole', stockWhen('splined')),
  column(['stock'], 'stock pitch', 'stock.pitch', 'number', { ...OPTIONAL, ...stockWhen('splined') }),
  column(['stock'], 'stock module', 'stock.module', 'number', { ...OPTIONAL, ...stockWhen('splined') }),
  column(
    ['stock'],
    'formed ends',
    'stock.ends',
    [
      ['column', 'column end'],
      ['box', 'box end'],
      ['both', 'both ends'],
    ],
    stockWhen('double-d-end', 'splined'),
  ),
  column(['stock'], 'formed length', 'stock.formed', 'length', stockWhen('double-d-end', 'splined')),
  column(['stock'], 'slip travel', 'stock.slip.travel', 'length', slips),
  column(['stock'], 'slip overlap', 'stock.slip.overlap', 'length', slips),
  column(
    ['stock'],
    'material',
    'stock.material',
    [
      ['steel', 'plain steel'],
      ['stainless', 'stainless'],
    ],
    OPTIONAL,
  ),
  column(['arm'], 'arm', 'arm', [
    ['pitman', 'pitman arm'],
    ['steering', 'steering arm'],
  ]),
  column(['stock', 'arm'], 'length', 'length', 'length'),

  column(['support'], 'bearing bore', 'bore', 'length'),

  column(['rod-end'], 'thread', 'thread.diameter', 'length'),
  column(['rod-end'], 'thread pitch', 'thread.pitch', 'pitch'),
  column(['rod-end'], 'thread hand', 'hand', [
    ['right', 'right'],
    ['left', 'left'],
  ]),
  column(['rod-end'], 'hole or stud', 'size', 'length'),
  column(['rod-end'], 'ball angle', 'ballAngle', 'degrees'),

  column(
    ['arm'],
    'arm hole',
    'hole.kind',
    [
      ['spline', 'spline'],
      ['bore', 'bore'],
    ],
    OPTIONAL,
  ),
  column(['arm'], 'arm hole spline', 'hole.form', SPLINE_FORMS, { when: ['hole.kind', ['spline']] }),
  column(['arm'], 'arm hole teeth', 'hole.teeth', 'whole', { when: ['hole.kind', ['spline']] }),
  column(['arm'], 'arm hole pitch', 'hole.pitch', 'number', { ...OPTIONAL, when: ['hole.kind', ['spline']] }),
  column(['arm'], 'arm hole module', 'hole.module', 'number', {
    ...OPTIONAL,
    when: ['hole.kind', ['spline']],
  }),
  column(['arm'], 'arm hole diameter', 'hole.diameter', 'length', {
    when: ['hole.kind', ['spline', 'bore']],
  }),
  column(['arm'], 'ball hole', 'ballHole.diameter', 'length', OPTIONAL),
  column(['arm'], 'ball hole taper one in', 'ballHole.taper', 'number', OPTIONAL),
];

/** The columns that a kind of part has. */
export function columnsOf(kind: PartKind): readonly ShelfColumn[] {
  return COLUMNS.filter(({ kinds }) => kinds.includes(kind));
}

type Tree = Record<string, unknown>;

/** The value at a path, or nothing. */
export function valueAt(part: unknown, path: string): unknown {
  let value: unknown = part;
  for (const key of path.split('.')) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Tree)[key];
  }
  return value;
}

/** Puts a value at a path, making what holds it; places that are numbered make a list. */
export function putValue(part: Tree, path: string, value: unknown): void {
  const keys = path.split('.');
  let holder = part;
  for (const [i, key] of keys.slice(0, -1).entries()) {
    holder[key] ??= /^\d+$/.test(keys[i + 1] as string) ? [] : {};
    holder = holder[key] as Tree;
  }
  holder[keys.at(-1) as string] = value;
}

/** Whether a part of this kind, as far as it is given, asks for a column. */
export function isAsked({ kinds, when }: ShelfColumn, part: { readonly kind: PartKind }): boolean {
  if (!kinds.includes(part.kind)) return false;
  return when === undefined || when[1].includes(valueAt(part, when[0]) as string);
}

/** The words of a choice's value. */
export function choiceWords(choices: Choices, value: unknown): string {
  return choices.find(([entry]) => entry === value)?.[1] ?? String(value);
}

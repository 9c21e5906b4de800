type Group = readonly [code: number, value: string | number];
type Groups = readonly Group[];

/** Lines of a DXF from its groups: code and value, one on each line. */
export const dxfOf = (groups: Groups): string =>
  `${groups.map(([code, value]) => `${code}\n${value}`).join('\n')}\n`;

const section = (name: string, inside: Groups): Groups =>
  (
    [
      [0, 'SECTION'],
      [2, name],
    ] as Group[]
  ).concat(inside, [[0, 'ENDSEC']]);

/** A DXF of the plainest kind (R12 form): header variables, blocks and entities as groups. */
export function plainDxf(
  entities: Groups,
  { header = [], tables = [], blocks = [] }: { header?: Groups; tables?: Groups; blocks?: Groups } = {},
): string {
  const parts = [
    header.length > 0 ? section('HEADER', header) : [],
    tables.length > 0 ? section('TABLES', tables) : [],
    blocks.length > 0 ? section('BLOCKS', blocks) : [],
    section('ENTITIES', entities),
    [[0, 'EOF'] as Group],
  ];
  return dxfOf(parts.flat());
}

export const line = (layer: string, x1: number, y1: number, x2: number, y2: number): Groups => [
  [0, 'LINE'],
  [8, layer],
  [10, x1],
  [20, y1],
  [11, x2],
  [21, y2],
];

/**
 * A frame's side view as a draughtsman may have drawn it, in inches, nose to the left, its 0, 0 at the axle on the ground:
 * a rail, a hole for a box, and lines that cross.
 */
export const FRAME_DXF = plainDxf(
  [
    [0, 'POLYLINE'],
    [8, 'rail'],
    [66, 1],
    [70, 0],
    ...[
      [-12, 18],
      [20, 18],
      [40, 20],
      [70, 20],
    ].flatMap(
      ([x, y]): Groups => [
        [0, 'VERTEX'],
        [8, 'rail'],
        [10, x as number],
        [20, y as number],
      ],
    ),
    [0, 'SEQEND'],
    [0, 'CIRCLE'],
    [8, 'holes'],
    [10, 34],
    [20, 14],
    [40, 1.5],
    ...line('marks', 30, 10, 38, 18),
    ...line('marks', 30, 18, 38, 10),
    [0, 'TEXT'],
    [8, 'marks'],
    [1, 'frame'],
  ],
  {
    header: [
      [9, '$INSUNITS'],
      [70, 1],
    ],
  },
);

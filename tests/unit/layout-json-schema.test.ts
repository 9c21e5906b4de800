import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { layoutSchema, readLayout, refusalLine } from '../../shared-math/layout/index.ts';
import { toeboard } from '../support/command-line.ts';
import { DEMONSTRATIONS } from '../support/demonstration-files.ts';
import { COMBINATIONS, LOCATIONS, rawLayout } from '../support/layouts.ts';
import { rawShaft, SCREW_SIDE, SPLINE_SIDE } from '../support/shafts.ts';

// The published form, judged by ajv: a validator of JSON Schema that knows nothing of this program.

// biome-ignore lint/suspicious/noExplicitAny: documents and schemas are walked and spoiled here on purpose
type Json = any;

const { code, out } = await toeboard('schema');
const published: Json = JSON.parse(out);
const validate = new Ajv2020({ strict: true, allErrors: false }).compile(published);

/** What a description says of a number: its unit, or what it is a share, a ratio or a count of. */
const UNIT =
  /\b(mm|kg|N|px|[Dd]egrees)\b|teeth per inch|over sector angle|any length but 0|The share|Which of|seen through/;

/** A document that has something of everything that may be left out. */
function fullLayout(): Json {
  return structuredClone(
    rawLayout({
      notes: 'of everything something',
      car: {
        ...(rawLayout()['car'] as Json),
        noseAhead: 300,
        noseWidth: 900,
        driverSide: 'left',
      },
      lateral: { kind: 'spring', height: 480 },
      origins: { 'axle.left.kingpinTop': 'tape', 'steering.box.pitmanBall': 'plan' },
      studs: { 'steering.dragLinkBall': [0, 0, 1] },
      links: {
        dragLink: {
          section: 'tube',
          wall: 3,
          material: 'chromoly',
          offset: 0,
          ends: {
            pitman: {
              kind: 'threaded',
              takeOff: 40,
              thread: { diameter: 16, pitch: 1.5, hand: 'left' },
              reach: 70,
              threadLength: 40,
              jamNut: 8,
              adjuster: 10,
            },
            steeringArm: { kind: 'welded', takeOff: 20 },
          },
        },
        pitmanArm: { width: 30, thickness: 12, material: 'drawn-steel' },
      },
      diameters: { dragLink: 22, tieRod: 22, lateralBar: 20, rods: 19 },
      braking: { frontShare: 0.52, gravityHeight: 540, windUpStiffness: 400 },
      rails: [
        {
          name: 'left rail',
          path: [
            [-1500, 400, 450],
            [300, 400, 450],
          ],
          height: 100,
          width: 50,
          mirrored: true,
        },
      ],
      obstacles: [
        {
          kind: 'box',
          name: 'engine',
          role: 'engine',
          mirrored: false,
          centre: [-300, 0, 600],
          size: [600, 400, 500],
          turn: 2,
        },
        {
          kind: 'cylinder',
          name: 'header',
          role: 'header',
          mirrored: true,
          from: [-200, 300, 600],
          to: [-700, 320, 400],
          radius: 30,
        },
        {
          kind: 'capsule',
          name: 'pump',
          role: 'other',
          mirrored: false,
          from: [0, 0, 500],
          to: [50, 0, 500],
          radius: 40,
        },
      ],
      photos: [
        {
          view: 'side',
          hash: '0'.repeat(64),
          name: 'from the left',
          size: [4000, 3000],
          opacity: 0.5,
          shown: true,
          flipped: true,
          crop: [0, 0, 4000, 3000],
          lens: {
            line: [
              [0, 0],
              [10, 1],
              [20, 0],
            ],
          },
          straighten: {
            points: [
              [0, 0],
              [100, 0],
              [100, 100],
              [0, 100],
            ].map((at) => ({ at, place: at })),
          },
          scale: { from: [0, 0], to: [100, 0], distance: 500 },
          level: { from: [0, 0], to: [100, 1] },
          anchor: { at: [5, 5], point: 'axle.left.wheelCentre', stands: [0, 710, 330] },
          depth: 700,
          distance: 4000,
          marks: [{ point: 'axle.left.kingpinTop', at: [9, 9] }],
          notes: [{ from: [0, 0], to: [5, 5], text: 'rail', tape: 100 }],
          lengths: [{ from: 'axle.left.kingpinTop', to: 'axle.left.kingpinBottom', tape: 131 }],
        },
      ],
      shaft: rawShaft({
        joints: [
          {
            kind: 'single',
            centre: [-1346.5, 332.5, 735.5],
            limit: 30,
            columnSide: SCREW_SIDE,
            boxSide: SPLINE_SIDE,
          },
          { kind: 'double', centre: [-1020, 452, 486] },
        ],
        shafts: [{ clock: 4, stock: { kind: 'round', diameter: 19, material: 'steel' } }],
        supports: [{ shaft: 0, at: 0.5 }],
      }),
      ride: {
        sprungMass: 300,
        unsprungMass: 120,
        spring: {
          kind: 'leaf',
          lie: 'across',
          length: 900,
          width: 45,
          thickness: 6,
          leaves: 7,
          fullLeaves: 2,
        },
        damper: { bump: 1, rebound: 2 },
        springBase: 900,
        damperBase: 800,
        tyreRate: 180,
        tyreDamping: 0.1,
        rollStiffness: 10,
        sprungHeight: 500,
        sprungGyration: 300,
        axleGyration: 500,
      },
    }),
  );
}

/** Every place in a value, as the keys that lead there; the whole first. */
function* places(
  value: Json,
  keys: readonly (string | number)[] = [],
): Generator<readonly (string | number)[]> {
  yield keys;
  if (typeof value !== 'object' || value === null) return;
  for (const key of Object.keys(value))
    yield* places(value[key], [...keys, Array.isArray(value) ? Number(key) : key]);
}

/** The document with what stands at a place changed by `spoil`, which is given what holds it and its key there. */
function spoiled(
  keys: readonly (string | number)[],
  spoil: (holder: Json, key: string | number) => void,
): Json {
  const whole = { whole: fullLayout() };
  let holder: Json = whole;
  const path = ['whole', ...keys];
  for (const key of path.slice(0, -1)) holder = holder[key];
  spoil(holder, path.at(-1) as string | number);
  return whole.whole;
}

const SPOILS: readonly (readonly [string, (holder: Json, key: string | number) => void])[] = [
  [
    'taken away',
    (holder, key) => (Array.isArray(holder) ? holder.splice(Number(key), 1) : delete holder[key]),
  ],
  ['one more entry', (holder) => Array.isArray(holder) && holder.push(holder[0])],
  [
    'an unknown key beside it',
    (holder, key) => {
      const at = holder[key];
      if (typeof at === 'object' && at !== null && !Array.isArray(at)) at['colour'] = 'red';
    },
  ],
  ...([0, -1, 1e9, -1e9, 7.5, '', 'mirrored', 'x'.repeat(30_000), true, null, [], {}] as Json[]).map(
    (put) =>
      [
        `${JSON.stringify(put).slice(0, 20)} there`,
        (holder: Json, key: string | number) => {
          holder[key] = put;
        },
      ] as const,
  ),
];

describe('the JSON Schema that the command prints', () => {
  test('names its dialect, and is a schema of it', () => {
    expect(code).toBe(0);
    expect(published.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    // ajv in its strict form has refused keywords that it does not know, when it compiled this above.
    expect(validate).toBeTypeOf('function');
  });

  test.each(DEMONSTRATIONS)('takes %s', (_, document) => {
    expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
  });

  test('takes every kind of axle location, what may be left out, and what may be put in', () => {
    for (const { over } of COMBINATIONS)
      expect(validate(rawLayout(over)), JSON.stringify(validate.errors)).toBe(true);
    const { notes: _n, rails: _r, obstacles: _o, photos: _p, shaft: _s, ride: _i, ...bare } = rawLayout();
    expect(validate(bare)).toBe(true);
    expect(validate(fullLayout()), JSON.stringify(validate.errors)).toBe(true);
    expect(readLayout(fullLayout()).ok).toBe(true);
  });

  test('judges every spoiled document as the program does, place by place', () => {
    const differ: string[] = [];
    let refused = 0;
    let taken = 0;
    for (const keys of places(fullLayout()))
      for (const [what, spoil] of SPOILS) {
        const document = spoiled(keys, spoil);
        const byProgram = layoutSchema.safeParse(document).success;
        if (byProgram) taken += 1;
        else refused += 1;
        if (validate(document) !== byProgram) differ.push(`${keys.join('.')}: ${what}, program ${byProgram}`);
      }
    expect(differ).toEqual([]);
    // Both verdicts were given often enough for the comparison to mean something.
    expect(refused).toBeGreaterThan(2000);
    expect(taken).toBeGreaterThan(200);
  });

  test('a name of blanks alone is refused', () => {
    expect(validate(rawLayout({ name: '   ' }))).toBe(false);
    expect(validate(rawLayout({ version: 3 }))).toBe(false);
  });

  const half = (over: Json): Json => ({
    ...(rawLayout()['axle'] as Json),
    left: { ...(rawLayout()['axle'] as Json).left, ...over },
  });
  const steering = (over: Json, box: Json = {}): Json => {
    const plain = rawLayout()['steering'] as Json;
    return { ...plain, ...over, box: { ...plain.box, ...box } };
  };

  test.each<[string, Json]>([
    ['left wheel centre stands', { axle: half({ wheelCentre: [0, -710, 330] }) }],
    ['top above its bottom', { axle: half({ kingpinTop: [-7, 631, 200] }) }],
    ['line of their kingpin', { axle: half({ tieRodBall: [0, 640, 330] }) }],
    ['of the sector shaft', { steering: steering({}, { pitmanBall: [-800, 420, 490] }) }],
    ['both ends on one spot', { lateral: { kind: 'bar', axle: [1, 2, 3], frame: [1, 2, 3] } }],
    ['no direction is [0, 0, 0]', { steering: steering({}, { sectorAxis: [0, 0, 0] }) }],
    [
      'between its two eyes',
      {
        location: {
          ...LOCATIONS['parallel-leaf'],
          left: { fixedEye: [510, 400, 365], seat: [600, 400, 320], shackleEye: [-580, 400, 372] },
        },
      },
    ],
    [
      'ahead of its clamp on the line from butt',
      {
        location: {
          ...LOCATIONS['quarter-elliptic'],
          left: { ...(LOCATIONS['quarter-elliptic'].left as Json), eye: [-480, 412, 250] },
        },
      },
    ],
    [
      'further out from its clamp',
      { lateral: { kind: 'fixed-spring', clamp: [0, -55, 470], eye: [0, -100, 380] } },
    ],
    ['keys of origins are hardpoints', { origins: { 'axle.left.elbow': 'tape' } }],
    ['one intermediate shaft fewer', { shaft: rawShaft({ shafts: [] }) }],
    ['A solid rod has no wall', { links: { tieRod: { section: 'rod', wall: 3 } } }],
    [
      'no more leaves run',
      {
        ride: {
          spring: {
            kind: 'leaf',
            lie: 'across',
            length: 900,
            width: 45,
            thickness: 6,
            leaves: 7,
            fullLeaves: 8,
          },
        },
      },
    ],
  ])('says in its description that it cannot hold this: %s', (words, over) => {
    expect(published.description).toContain(words);
    const document = rawLayout(over);
    expect(validate(document)).toBe(true);
    const read = readLayout(document);
    expect(read.ok ? 'taken' : refusalLine(read.failure)).not.toBe('taken');
  });

  test('says of every field what it is, and of every length and angle its unit', () => {
    const bare: string[] = [];
    const unitless: string[] = [];
    const walk = (schema: Json, path: string, said = ''): void => {
      const about = `${said} ${schema.description ?? ''}`;
      if (schema.type === 'number' && !UNIT.test(about) && schema.const === undefined) unitless.push(path);
      for (const [key, field] of Object.entries<Json>(schema.properties ?? {})) {
        if (!field.description && key !== 'kind') bare.push(`${path}.${key}`);
        walk(field, `${path}.${key}`);
      }
      for (const part of [...(schema.anyOf ?? []), ...(schema.oneOf ?? []), ...(schema.prefixItems ?? [])])
        walk(part, path, about);
      for (const part of [schema.items, schema.additionalProperties])
        if (typeof part === 'object') walk(part, `${path}[]`, about);
    };
    walk(published, 'layout');
    expect(bare).toEqual([]);
    expect(unitless).toEqual([]);
  });
});

test('schema takes no words, and says so', async () => {
  const { code: exit, err } = await toeboard('schema', 'layout.json');
  expect(exit).toBe(2);
  expect(err).toContain('schema takes no file: remove "layout.json"');
});

// What is mutated in one go, and the tests that have to notice. A part fits half an hour on two cores, so that its tests
// are those that concern it and are quick; what the slow ones alone would notice counts as not noticed.

export interface Part {
  /** Below shared-math. */
  readonly folder: string;
  /** Of the folder, where it is more than one part: these files alone, or all but these. */
  readonly only?: readonly string[];
  readonly but?: readonly string[];
  readonly tests: readonly string[];
}

const unit = (...names: string[]) => names.map((name) => `tests/unit/${name}.test.ts`);
const reference = (...names: string[]) => names.map((name) => `tests/reference/${name}.test.ts`);

/** Where a way for the steering shaft is looked for: its tests take longer. */
const ROUTES = ['layout-obstacles.ts', 'obstacles.ts', 'route-search.ts', 'suggest.ts'];

export const PARTS = {
  units: { folder: 'units', tests: unit('units') },
  words: { folder: 'words', tests: unit('cautions', 'words') },
  pose: { folder: 'pose', tests: [...unit('pose-descent', 'pose'), ...reference('axle-arcs', 'leaf-arc')] },
  linkage: {
    folder: 'linkage',
    tests: [
      ...unit('linkage-doors', 'pose-descent', 'linkage'),
      ...reference('axle-arcs', 'leaf-arc', 'spatial-link', 'textbook-four-bar', 'toe-and-kingpin'),
    ],
  },
  sweep: {
    folder: 'sweep',
    tests: [
      ...unit('turn', 'turn-figures', 'travel', 'turning-circle', 'one-wheel', 'shaft-turn'),
      ...reference('ackermann', 'parking-effort', 'toe-and-kingpin'),
    ],
  },
  aim: { folder: 'aim', tests: unit('map-figures', 'zero-slope') },
  shaft: {
    folder: 'shaft',
    but: ROUTES,
    tests: [
      ...unit('shaft-words', 'shaft-ends', 'shaft-making', 'shaft-line', 'shaft', 'drawing/shaft'),
      ...reference('cardan-joint', 'shaft-chain', 'shaft-strength'),
    ],
  },
  routes: { folder: 'shaft', only: ROUTES, tests: unit('route-pieces') },
  findings: {
    folder: 'findings',
    tests: unit(
      ...[
        'the-rules',
        'at-the-limit',
        'said-of-turn',
        'said-of-bump-steer',
        'said-of-axle',
        'said-of-slips',
        'said-of-reach',
        'said-of-clearance',
        'said-of-shaft',
      ].map((name) => `findings/${name}`),
      'finding-words',
      'limits',
    ),
  },
} as const satisfies Record<string, Part>;

export type PartName = keyof typeof PARTS;

/** The files of a part, or one of them, as Stryker's `mutate` takes them. */
export function patternsOf(part: PartName, file: string): string[] {
  const { folder, only, but } = PARTS[part] as Part;
  const at = (name: string) => `shared-math/${folder}/${name}`;
  if (file !== '') return [at(file)];
  return only ? only.map(at) : [at('**/*.ts'), ...(but ?? []).map((name) => `!${at(name)}`)];
}

export function isPart(name: string): name is PartName {
  return Object.hasOwn(PARTS, name);
}

import { existsSync, globSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { circlesIn } from '../support/import-circles.ts';

const root = resolve(import.meta.dirname, '../..');

interface Import {
  readonly from: string;
  readonly to: string;
  readonly typeOnly: boolean;
}

const IMPORT =
  /(?:^|\n)\s*(import|export)\s+(type\s)?[^'";]*?from\s+'([^']+)'|import\s*\(\s*'([^']+)'\s*\)|(?:^|\n)\s*import\s+'([^']+)'/g;

/** The imports of a source text, as `from` and the path or package that it names. */
function importsOf(from: string, text: string): Import[] {
  return [...text.matchAll(IMPORT)].map((match) => {
    const target = (match[3] ?? match[4] ?? match[5]) as string;
    const to = target.startsWith('.') ? relative(root, resolve(root, dirname(from), target)) : target;
    return { from, to: to.replaceAll('\\', '/'), typeOnly: match[2] !== undefined };
  });
}

const sources = ['shared-math', 'src-main', 'src-renderer', 'src-page'].flatMap((folder) =>
  globSync(`${folder}/**/*.{ts,svelte}`, { cwd: root }).map((path) => path.replaceAll('\\', '/')),
);
const imports = sources.flatMap((path) => importsOf(path, readFileSync(join(root, path), 'utf8')));

/** In shared-math a folder may import those on lines before its own; folders on one line do not import one another. */
const MATHS_LEVELS = [
  ['capitalised.ts', 'clamp.ts', 'outcome.ts', 'tolerances.ts'],
  ['outside'],
  ['units', 'solve'],
  ['geometry'],
  ['layout'],
  ['splines'],
  ['links', 'pose', 'shaft'],
  ['linkage'],
  ['sweep'],
  ['adjust', 'aim', 'drawing', 'joints', 'ride'],
  ['brake', 'clearance', 'detail', 'pictorial', 'sit', 'swept', 'trace', 'underlay'],
  ['forces'],
  ['findings'],
  ['arrange', 'shelf', 'tune', 'words'],
  ['counter', 'moving', 'propose'],
];

function mathsLevel(path: string): number {
  const part = path.split('/')[1] as string;
  return MATHS_LEVELS.findIndex((level) => level.includes(part));
}

/** In the renderer the same holds; of panels those about one thing may import one another, of places none another's. */
const RENDERER_LEVELS = [
  ['look'],
  ['host', 'jobs'],
  ['pictures'],
  ['controls'],
  ['document'],
  ['board', 'curves'],
  ['panels'],
  ['places/place.ts'],
  ['places/late-strip.ts'],
  ['places'],
  ['places/composed.ts', 'places/index.ts'],
  ['actions'],
  ['shell'],
  ['page.ts'],
  ['main.ts'],
];

function rendererLevel(path: string): number {
  const part = path.slice('src-renderer/'.length);
  const own = RENDERER_LEVELS.findIndex((level) => level.includes(part));
  return own >= 0 ? own : RENDERER_LEVELS.findIndex((level) => level.includes(part.split('/')[0] as string));
}

/** What may import itself freely: a room, and of the places each by itself. */
function roomOf(path: string): string {
  const [, room, place, file] = path.split('/');
  if (room !== 'places') return room as string;
  return file === undefined ? path : `places/${place}`;
}

/** In output a folder may import those on lines before its own. */
const OUTPUT_LEVELS = [['pens', 'tables'], ['flow'], ['pages'], ['drawings'], ['film', 'moving'], ['jobs']];

function outputLevel(path: string): number {
  const part = path.slice('src-main/output/'.length).split('/')[0] as string;
  return OUTPUT_LEVELS.findIndex((level) => level.includes(part));
}

/** Circles that are meant to be: which files may be in one, and why. */
const MEANT_CIRCLES: readonly { readonly files: RegExp; readonly because: string }[] = [
  {
    files: /^src-renderer\/board\/gestures\//,
    because: 'a gesture hands over to the next: dragging ends in idle, idle begins in dragging',
  },
  {
    files: /^src-renderer\/document\/(clearances\.svelte|open-layout\.svelte)\.ts$/,
    because: 'types alone: the open layout shows a gap, and gaps are those of an open layout',
  },
];

/** A rule answers why an import is wrong, or nothing. */
const RULES: Record<string, (entry: Import) => string | undefined> = {
  'shared-math imports itself and zod, and its ride the engine': ({ from, to }) => {
    if (!from.startsWith('shared-math/') || to.startsWith('shared-math/') || to === 'zod') return undefined;
    return to === 'planck' && from.startsWith('shared-math/ride/') ? undefined : 'not pure';
  },
  'shared-math runs one way': ({ from, to }) => {
    if (!from.startsWith('shared-math/') || !to.startsWith('shared-math/')) return undefined;
    if (from.split('/')[1] === to.split('/')[1]) return undefined;
    return mathsLevel(to) < mathsLevel(from) ? undefined : 'against the direction';
  },
  'src-main imports shared-math, itself and packages': ({ from, to }) =>
    from.startsWith('src-main/') && to.startsWith('src-renderer/') ? 'the host knows no screen' : undefined,
  'inside src-main only hosts know hosts': ({ from, to }) =>
    /^src-main\/(store|files|output|api)\//.test(from) && /^src-main\/hosts\//.test(to)
      ? 'against the direction'
      : undefined,
  'pages, pens and flow are given a job: they know no store, no api': ({ from, to }) =>
    /^src-main\/output\/(pages|pens|flow)\//.test(from) && /^src-main\/(store|api|commands|files)\//.test(to)
      ? 'it is given what it prints'
      : undefined,
  'what is made knows no calls': ({ from, to }) =>
    /^src-main\/output\//.test(from) && /^src-main\/(api|commands)\//.test(to)
      ? 'against the direction'
      : undefined,
  'output runs one way': ({ from, to }) => {
    if (!from.startsWith('src-main/output/') || !to.startsWith('src-main/output/')) return undefined;
    if (from.split('/')[2] === to.split('/')[2]) return undefined;
    return outputLevel(to) < outputLevel(from) ? undefined : 'against the direction';
  },
  'commands skip api and hosts': ({ from, to }) =>
    from.startsWith('src-main/commands/') && /^src-main\/(api|hosts)\//.test(to) ? 'not needed' : undefined,
  'only Electron files import electron': ({ from, to }) =>
    to === 'electron' && !/^src-main\/(electron-|hosts\/electron\/)/.test(from)
      ? 'the other host has none'
      : undefined,
  'the page that moves takes the mathematics, and the sheet’s inks for its picture': ({ from, to }) =>
    from.startsWith('src-page/') && !/^(?:shared-math|src-page|src-main\/output\/pens)\//.test(to)
      ? 'not for a page that is handed on'
      : undefined,
  'nothing imports the script of the page that moves': ({ from, to }) =>
    to.startsWith('src-page/') && !from.startsWith('src-page/') ? 'it is bundled as it is' : undefined,
  'the renderer takes only types from the contract': ({ from, to, typeOnly }) => {
    if (!from.startsWith('src-renderer/') || !to.startsWith('src-main/')) return undefined;
    if (to !== 'src-main/api/contract.ts') return 'only the contract';
    return typeOnly ? undefined : 'types only';
  },
  'the renderer knows no Node': ({ from, to }) =>
    from.startsWith('src-renderer/') && to.startsWith('node:') ? 'a page has none' : undefined,
  'Konva only on the board, uPlot only in the curves': ({ from, to }) => {
    if (/^konva/.test(to) && !from.startsWith('src-renderer/board/')) return 'board only';
    if (/^uplot/.test(to) && !from.startsWith('src-renderer/curves/')) return 'curves only';
    return undefined;
  },
  'a place hands in its curves as data': ({ from, to }) =>
    /^src-renderer\/(places|panels)\//.test(from) && /^src-renderer\/curves\/(.*\.svelte|plot\.ts)$/.test(to)
      ? 'curves draws them'
      : undefined,
  'the renderer runs one way': ({ from, to }) => {
    if (!from.startsWith('src-renderer/') || !to.startsWith('src-renderer/')) return undefined;
    const [a, b] = [roomOf(from), roomOf(to)];
    if (a === b) return undefined;
    return rendererLevel(to) < rendererLevel(from) ? undefined : 'against the direction';
  },
  'jobs see the mathematics and one another': ({ from, to }) =>
    /^src-renderer\/(jobs\/|.*(-job|worker)\.ts$)/.test(from) &&
    /^src-renderer\/(document|panels|board|curves|actions|shell)\/|\.svelte(\.ts)?$/.test(to) &&
    !/-job\.ts$/.test(to)
      ? 'a worker has no page'
      : undefined,
  'nothing imports the tests': ({ to }) => (to.startsWith('tests/') ? 'tests stand outside' : undefined),
};

/** The rooms that all places share, and the ids of the places, as each says its own. */
const SHARED = /^src-renderer\/(board|curves|actions|shell|document|controls|panels)\//;
const PLACE_IDS = globSync('src-renderer/places/*/place{,.svelte}.ts', { cwd: root }).flatMap((path) => {
  const id = /\bid: '([a-z]+)',\s*name: '/.exec(readFileSync(join(root, path), 'utf8'))?.[1];
  return id ? [id] : [];
});

/**
 * Where a text asks which place it is: an id that is compared with, chosen among, or asked for by; and where it keeps what
 * is one place's own, by a name that begins with its id.
 */
function placesAsked(text: string, ids: readonly string[]): string[] {
  const id = `'(?:${ids.join('|')})'`;
  const named = ids.map((each) => `[${each.charAt(0)}${each.charAt(0).toUpperCase()}]${each.slice(1)}`);
  const asks = new RegExp(
    `(?:[!=]==|\\bcase)\\s*${id}|${id}\\s*[!=]==|${id}\\s*\\|\\s*'|(?<!\\|)\\|\\s*${id}|\\b(?:${named.join('|')})(?:Page|Place|Column|Strip|Tab|Open|Shown)s?\\b`,
    'g',
  );
  return [...(text.match(asks) ?? []), ...placesOpened(text, ids)];
}

/** Where a text opens or looks up a place by its id. */
function placesOpened(text: string, ids: readonly string[]): string[] {
  return text.match(new RegExp(`\\b(?:go|named|\\w*[pP]lace)\\('(?:${ids.join('|')})'`, 'g')) ?? [];
}

describe('the rooms that all places share', () => {
  test('ask of no place whether it is that one', () => {
    expect(PLACE_IDS).toHaveLength(6);
    const asking = sources
      .filter((path) => SHARED.test(path))
      .flatMap((path) =>
        placesAsked(readFileSync(join(root, path), 'utf8'), PLACE_IDS).map((words) => `${path}: ${words}`),
      );
    expect(asking).toEqual([]);
  });

  test('and no place opens one by its id', () => {
    const opening = sources
      .filter((path) => /^src-renderer\/places\/[^/]+\//.test(path))
      .flatMap((path) => {
        const text = readFileSync(join(root, path), 'utf8');
        return placesOpened(text, PLACE_IDS).map((words) => `${path}: ${words}`);
      });
    expect(opening).toEqual([]);
  });

  test('would be found asking', () => {
    const ids = ['road', 'turn'];
    for (const text of [
      "if (lookedAt === 'road') return;",
      "lookedAt: 'travel' | 'turn' = 'travel';",
      "go('road');",
      "switch (place) { case 'turn': }",
      "shell.openPlace('road');",
      "roadPage = $state('drive');",
      "export type TurnPage = 'left' | 'right';",
    ])
      expect(placesAsked(text, ids), text).toHaveLength(1);
    for (const text of [
      "const class = 'road'; say('turn');",
      'this.turned = roadway(turnSweep, openPage);',
      'shell.openBeginning();',
    ])
      expect(placesAsked(text, ids), text).toEqual([]);
  });
});

describe('import directions', () => {
  test('the sources are read at all', () => {
    expect(sources.length).toBeGreaterThan(40);
    expect(imports.length).toBeGreaterThan(100);
  });

  test.each(Object.entries(RULES))('%s', (_, rule) => {
    const broken = imports.flatMap((entry) => {
      const why = rule(entry);
      return why ? [`${entry.from} imports ${entry.to}: ${why}`] : [];
    });
    expect(broken).toEqual([]);
  });

  test('relative imports lead to files', () => {
    const lost = imports.filter(({ from, to }) => {
      const isFile = /^(shared-math|src-main|src-renderer)\//.test(to);
      return isFile && !existsSync(join(root, to.split('?')[0] as string)) && !from.endsWith('.svelte');
    });
    expect(lost).toEqual([]);
  });

  test('no file imports itself round about, but in circles that are meant', () => {
    const graph = new Map(sources.map((path) => [path, [] as string[]]));
    for (const { from, to } of imports) graph.get(from)?.push(to.split('?')[0] as string);
    const circles = circlesIn(graph);
    const isMeant = (circle: string[]) =>
      MEANT_CIRCLES.some(({ files }) => circle.every((path) => files.test(path)));
    expect(circles.filter((circle) => !isMeant(circle))).toEqual([]);
    // One that is no more is struck from the list.
    for (const { files, because } of MEANT_CIRCLES)
      expect(
        circles.some((circle) => circle.every((path) => files.test(path))),
        because,
      ).toBe(true);
  });

  test('circles are found, however long, and what only meets is none', () => {
    const graph = (lines: Record<string, string[]>) => new Map(Object.entries(lines));
    expect(circlesIn(graph({ a: ['b', 'c'], b: ['d'], c: ['d'], d: [] }))).toEqual([]);
    expect(circlesIn(graph({ a: ['b'], b: ['c'], c: ['a'], d: ['a'] }))).toEqual([['a', 'b', 'c']]);
    expect(circlesIn(graph({ a: ['b'], b: ['a', 'c'], c: ['d'], d: ['c'], e: ['e'] }))).toEqual([
      ['c', 'd'],
      ['a', 'b'],
      ['e'],
    ]);
  });

  test('each rule can be broken', () => {
    const wrong: Record<string, [string, string]> = {
      'shared-math imports itself and zod, and its ride the engine': [
        'shared-math/pose/x.ts',
        "import { World } from 'planck';",
      ],
      'shared-math runs one way': ['shared-math/pose/x.ts', "import { a } from '../aim/index.ts';"],
      'src-main imports shared-math, itself and packages': [
        'src-main/x.ts',
        "import { a } from '../src-renderer/a.ts';",
      ],
      'inside src-main only hosts know hosts': ['src-main/store/x.ts', "import { a } from '../hosts/a.ts';"],
      'pages, pens and flow are given a job: they know no store, no api': [
        'src-main/output/pages/x.ts',
        "import { a } from '../../store/a.ts';",
      ],
      'what is made knows no calls': [
        'src-main/output/drawings/x.ts',
        "import { a } from '../../api/contract.ts';",
      ],
      'output runs one way': ['src-main/output/flow/x.ts', "import type { a } from '../pages/job.ts';"],
      'commands skip api and hosts': ['src-main/commands/x.ts', "import { a } from '../api/contract.ts';"],
      'only Electron files import electron': ['src-main/start.ts', "const e = await import('electron');"],
      'the renderer takes only types from the contract': [
        'src-renderer/x.ts',
        "import { contract } from '../src-main/api/contract.ts';",
      ],
      'the renderer knows no Node': ['src-renderer/x.ts', "import { a } from 'node:path';"],
      'Konva only on the board, uPlot only in the curves': [
        'src-renderer/places/road/x.ts',
        "import Konva from 'konva';",
      ],
      'a place hands in its curves as data': [
        'src-renderer/places/road/x.svelte',
        "import CurvePanel from '../../curves/CurvePanel.svelte';",
      ],
      'the renderer runs one way': ['src-renderer/board/x.ts', "import { a } from '../places/road/a.ts';"],
      'jobs see the mathematics and one another': [
        'src-renderer/places/layout/map/map-job.ts',
        "import { a } from '../../../document/a.ts';",
      ],
      'the page that moves takes the mathematics, and the sheet’s inks for its picture': [
        'src-page/x.ts',
        "import { a } from '../src-main/output/pages/index.ts';",
      ],
      'nothing imports the script of the page that moves': [
        'src-main/output/moving/x.ts',
        "import { a } from '../../../src-page/page.ts';",
      ],
      'nothing imports the tests': ['src-main/x.ts', "import { a } from '../tests/a.ts';"],
    };
    expect(Object.keys(wrong).sort()).toEqual(Object.keys(RULES).sort());
    for (const [name, [from, text]] of Object.entries(wrong)) {
      const [entry] = importsOf(from, text);
      expect(entry && RULES[name]?.(entry), name).toBeTruthy();
    }
  });
});

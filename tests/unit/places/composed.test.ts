import { globSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { Actions } from '../../../src-renderer/actions/actions.ts';
import { pressed } from '../../../src-renderer/actions/keys.ts';
import type { Contributor } from '../../../src-renderer/board/contributor.ts';
import { shown } from '../../../src-renderer/controls/late.svelte.ts';
import { Composed } from '../../../src-renderer/places/composed.ts';
import type { Place, PlacePiece } from '../../../src-renderer/places/place.ts';
import { dummyStrip } from '../../support/dummy-place/dummy-strip.ts';

const root = resolve(import.meta.dirname, '../../..');
const pieceOf = (): PlacePiece => ({ value: shown((() => ({})) as never, {}) });
const stripOf = () => ({ value: () => dummyStrip(() => {}) });

const home: Place = { id: 'home', name: 'Home', column: pieceOf(), strip: stripOf() };

/** A place that hands in everything that a place can. */
function dummy(done: string[] = []): Place {
  const contributor: Contributor = () => ({
    id: 'dummy',
    overlay: () => ({ marks: [{ x: 1, y: 2, kind: 'cross' }] }),
  });
  let open = true;
  return {
    id: 'dummy',
    name: 'Dummy',
    column: pieceOf(),
    strip: stripOf(),
    pose: pieceOf(),
    contributors: [contributor],
    actions: [
      {
        id: 'try',
        name: 'Try it',
        strokes: [{ key: 'q' }],
        enabled: () => true,
        run: () => done.push('try'),
      },
    ],
    keyUses: [({ key }) => key === 'ArrowUp' && done.push('arrow') > 0],
    files: { takes: ({ name }) => name.endsWith('.dummy'), take: () => {} },
    escape: () => {
      const was = open;
      open = false;
      return was;
    },
  };
}

const press = (key: string) => ({ key, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false });
const file = (name: string) => ({ name }) as File;

describe('a place that is added', () => {
  test('stands in the row of places, after those before it', () => {
    const composed = new Composed([home, dummy()], 'home');
    expect(composed.places.map(({ name }) => name)).toEqual(['Home', 'Dummy']);
    expect(composed.named('dummy')?.name).toBe('Dummy');
    expect(composed.named('no such place')).toBeUndefined();
  });

  test('is where a new car begins if it says so; else the first is', () => {
    expect(new Composed([home, dummy()], 'home').beginning.id).toBe('home');
    expect(new Composed([home, { ...dummy(), begins: true }], 'home').beginning.id).toBe('dummy');
  });

  test('shows its own column and curves, and one that has none shows those of the home place', () => {
    const place = dummy();
    const bare: Place = { id: 'bare', name: 'Bare' };
    const composed = new Composed([bare, home, place], 'home');
    expect(composed.columnOf(place)).toBe(place.column);
    expect(composed.stripOf(place)).toBe(place.strip);
    expect(composed.columnOf(bare)).toBe(home.column);
    expect(composed.stripOf(bare)).toBe(home.strip);
  });

  test('has its overlay on the board', () => {
    const composed = new Composed([home, dummy()], 'home');
    const contributions = composed.contributors.map((contribute) => contribute({} as never));
    expect(contributions.map(({ id }) => id)).toEqual(['dummy']);
    expect(contributions[0]?.overlay?.({} as never).marks).toEqual([{ x: 1, y: 2, kind: 'cross' }]);
  });

  test('has its actions in the list of keys, and its keys are answered', () => {
    const done: string[] = [];
    const composed = new Composed([home, dummy(done)], 'home');
    const actions = new Actions(composed.actions);
    expect(actions.named('try')?.name).toBe('Try it');
    const openLayout = { inHand: undefined, nudge: () => done.push('nudge') };
    expect(pressed(press('q'), 'board', actions, openLayout, composed.keyUses)).toBe(true);
    expect(pressed(press('ArrowUp'), 'board', actions, openLayout, composed.keyUses)).toBe(true);
    expect(pressed(press('x'), 'board', actions, openLayout, composed.keyUses)).toBe(false);
    expect(done).toEqual(['try', 'arrow']);
  });

  test('is given its files and no others', () => {
    const place = dummy();
    const { own, left } = new Composed([home, place], 'home').sorted([file('a.dummy'), file('b.json')]);
    expect([...own].map(([of, files]) => [of.id, files.map(({ name }) => name)])).toEqual([
      ['dummy', ['a.dummy']],
    ]);
    expect(left.map(({ name }) => name)).toEqual(['b.json']);
  });

  test('puts away what it has open on Escape, once', () => {
    const composed = new Composed([home, dummy()], 'home');
    expect(composed.escape()).toBe(true);
    expect(composed.escape()).toBe(false);
  });
});

describe('one new place is one folder and one line', () => {
  const outside = globSync(
    'src-renderer/{board,curves,document,controls,panels,actions,shell}/**/*.{ts,svelte}',
    {
      cwd: root,
    },
  );

  test('no room but the list of places names one of them in an import', () => {
    expect(outside.length).toBeGreaterThan(80);
    const naming = outside.filter((path) =>
      /from '[./]*\/places\/(?!index\.ts'|composed\.ts')/.test(readFileSync(join(root, path), 'utf8')),
    );
    expect(naming).toEqual([]);
  });

  test('every folder of a place stands in the list', () => {
    const list = readFileSync(join(root, 'src-renderer/places/index.ts'), 'utf8');
    const folders = globSync('src-renderer/places/*/place{,.svelte}.ts', { cwd: root });
    expect(folders).toHaveLength(6);
    for (const path of folders)
      expect(list).toContain(`./${path.replaceAll('\\', '/').split('/').slice(2).join('/')}`);
  });
});

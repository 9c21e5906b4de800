import { describe, expect, test } from 'vitest';
import { ranked } from '../../../src-renderer/shell/find/ranking.ts';

const named = (...names: string[]) => names.map((name) => ({ name }));
const found = (query: string, ...names: string[]) =>
  ranked(named(...names), query).map(({ entry }) => entry.name);

// The order that is asked for: beginnings of words, then the inside of words, then letter by letter.
describe('what is found by a few letters', () => {
  test('stands in the order of how near it is', () => {
    expect(
      found(
        'pit',
        'Spit and polish',
        'Left hairpin pivot',
        'The pitman ball is low',
        'Pitman ball',
        'Caster',
      ),
    ).toEqual(['Pitman ball', 'The pitman ball is low', 'Spit and polish', 'Left hairpin pivot']);
  });

  test('needs every word of the query, in any order, and cares for no accent and no capital', () => {
    expect(found('ball pit', 'Pitman ball', 'Drag link ball')).toEqual(['Pitman ball']);
    expect(found('noel', 'Noël Æsop', 'Nöel', 'No label')).toEqual(['Noël Æsop', 'Nöel']);
    expect(found('NOËL', 'noel')).toEqual(['noel']);
  });

  test('letter by letter, from the beginnings of words on and leaving few out', () => {
    expect(found('kpt', 'Left kingpin, top', 'Keep what is typed', 'Kingpin bottom')).toEqual([
      'Keep what is typed',
      'Left kingpin, top',
    ]);
    // A letter in a long text is no match: "pit" could be picked out of nearly any sentence.
    expect(found('pit', 'Parking takes about 18 lb at the rim', 'Pull the axle, then either tyre')).toEqual(
      [],
    );
    // The way that fits is found even where the first letter that offers itself leads nowhere.
    expect(found('tlt', 'Tie rod length: left to right')).toEqual(['Tie rod length: left to right']);
  });

  test('further words find it too, after its own name', () => {
    const entries = [
      { name: 'Arm down', also: 'Harrow, Pickup' },
      { name: 'Pickup as found', also: 'Odd Fellow' },
    ];
    expect(ranked(entries, 'pickup').map(({ entry }) => entry.name)).toEqual(['Pickup as found', 'Arm down']);
    expect(ranked(entries, 'harrow arm').map(({ entry }) => entry.name)).toEqual(['Arm down']);
  });

  test('equally near ones keep their order; an empty query finds all, one that fits nothing nothing', () => {
    expect(found('', 'B', 'A')).toEqual(['B', 'A']);
    expect(found(' ,; ', 'B', 'A')).toEqual(['B', 'A']);
    expect(found('left', 'Left b', 'Left a')).toEqual(['Left b', 'Left a']);
    expect(found('xyz', 'Left b')).toEqual([]);
  });

  test('a long query is picked out of a long text without trying every way, which would not end', () => {
    const long = Array.from({ length: 400 }, (_, i) => ({ name: `aab ${'ab '.repeat(30)}${i}` }));
    expect(ranked(long, 'aaaabbbbaaac')).toEqual([]);
  });
});

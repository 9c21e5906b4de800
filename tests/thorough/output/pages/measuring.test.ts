import { describe, expect, test } from 'vitest';
import {
  EMPTY_CAR_SURVEY,
  type ListRow,
  surveyList,
  USUAL_INSTRUMENTS,
  withTaken,
} from '../../../../shared-math/adjust/list/index.ts';
import { type LayoutDocument, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { documentOf, rawLayout, STEERED } from '../../../support/layouts.ts';
import { DEMONSTRATIONS, demonstration, jobOf, type PutText, printed } from '../../../support/printed.ts';

/** The text of a page as one string, its lines in the order in which they were put. */
const whole = (texts: readonly PutText[]) => texts.map(({ text }) => text).join(' ');

/** What stands in a row's card: from its number to the next row's. */
function cardOf(texts: readonly PutText[], rows: readonly ListRow[], at: number): string {
  const heads = texts.flatMap(({ text }, i) => (/^\d+ {2}$/.test(text) ? [i] : []));
  expect(heads).toHaveLength(rows.length);
  return whole(texts.slice(heads[at], heads[at + 1]));
}

describe.each(DEMONSTRATIONS)('the measuring sheet of %s', (name) => {
  const document = demonstration(name);
  const rows = surveyList(document);

  test.each(['in', 'mm'] as const)(
    'has every row of the list once, in its order, with how, unit and instrument, in %s',
    async (unit) => {
      const { texts } = await printed(jobOf({ document, kind: 'measuring', unit, paper: 'letter' }));
      rows.forEach((row, i) => {
        const card = cardOf(texts, rows, i);
        expect(card.startsWith(`${i + 1}   ${row.name}`)).toBe(true);
        expect(card.replaceAll(/\s+/g, ' ')).toContain(row.how);
        const angle = row.ways[0]?.unit === 'angle';
        expect(card).toContain(angle ? ' ° ' : ` ${unit} `);
        for (const way of row.ways.length > 1 ? row.ways : []) expect(card).toContain(way.name);
      });
    },
  );
});

test('every list that a car can have is printed whole', async () => {
  const lists = new Map(
    STEERED.map(({ label, over }) => {
      const document = documentOf(rawLayout(over));
      const rows = surveyList(document);
      return [rows.map(({ id }) => id).join(), { label, document, rows }] as const;
    }),
  );
  expect(lists.size).toBeGreaterThanOrEqual(8);
  for (const { label, document, rows } of lists.values()) {
    const { texts } = await printed(jobOf({ document, kind: 'measuring' }));
    const all = whole(texts);
    for (const { name } of rows) expect(all.includes(name), `${label}: ${name}`).toBe(true);
  }
}, 240_000);

describe('what was measured before', () => {
  const document = demonstration('hairpins-side-steer.json');
  const list = surveyList(document);
  const taken = (id: string, way: string, typed: string, figure: number) => {
    const outcome = withTaken(list, EMPTY_CAR_SURVEY, id, { way, typed, figure }, USUAL_INSTRUMENTS);
    if (!outcome.ok) throw new Error(outcome.failure);
    return outcome.value;
  };

  test('stands in its blank as it was typed', async () => {
    const survey = taken('track', 'plain', '56 3/8', 1431.9);
    const { texts } = await printed(jobOf({ document, kind: 'measuring', survey }));
    const at = list.findIndex(({ id }) => id === 'track');
    expect(cardOf(texts, list, at)).toContain('56 3/8');
    expect(whole(texts).match(/56 3\/8/g)).toHaveLength(1);
  });

  test('a car whose sides differ is listed by sides', async () => {
    const apart = resolveLayout(document) as unknown as LayoutDocument;
    const { texts } = await printed(jobOf({ document: apart, kind: 'measuring' }));
    const all = whole(texts);
    expect(all).toContain('Left hairpin pivot');
    expect(all).toContain('Right hairpin pivot');
  });
});

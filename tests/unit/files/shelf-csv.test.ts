import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readShelfCsv, shelfCsv } from '../../../src-main/files/index.ts';
import { anyShelfPart, SAMPLE_BOX, SAMPLE_JOINT, shelfPart } from '../../support/shelf-sample.ts';

/** What a file is refused with; one that is taken fails the test. */
function refusal(text: string): string {
  const read = readShelfCsv(text);
  if (read.ok) throw new Error('taken, and should have been refused');
  return read.failure;
}

function names(text: string): string[] {
  const read = readShelfCsv(text);
  if (!read.ok) throw new Error(read.failure);
  return read.value.map(({ name }) => name);
}

/**
 * RFC 4180, section 2, rules 5 to 7, written out by hand: fields in quotes may hold commas, line ends and doubled
 * quotes. Independent of the library under test.
 */
function fieldsOf(text: string): string[][] {
  const rows: string[][] = [[]];
  let field = '';
  let quoted = false;
  for (let i = 0; i < text.length; i += 1) {
    const sign = text[i] as string;
    if (quoted && sign === '"' && text[i + 1] === '"') {
      field += '"';
      i += 1;
    } else if (sign === '"') quoted = !quoted;
    else if (!quoted && (sign === ',' || text.startsWith('\r\n', i))) {
      rows.at(-1)?.push(field);
      field = '';
      if (sign !== ',') {
        rows.push([]);
        i += 1;
      }
    } else field += sign;
  }
  return rows.slice(0, -1);
}

describe('the shelf as a table file', () => {
  test('goes out and comes in as the same shelf, in mm and in inches, whatever its names are', () => {
    fc.assert(
      fc.property(fc.array(anyShelfPart, { maxLength: 12 }), fc.constantFrom('mm', 'in'), (parts, unit) => {
        expect(readShelfCsv(shelfCsv(parts, unit))).toEqual({ ok: true, value: parts });
      }),
      { numRuns: 150 },
    );
  });

  test('is RFC 4180: every line has as many fields as the first, ends in CRLF, and quotes hold the rest', () => {
    const odd = { ...SAMPLE_BOX, name: 'Box, "odd"\nin two lines' };
    const rows = fieldsOf(shelfCsv([odd, SAMPLE_JOINT], 'mm').replace('\uFEFF', ''));
    expect(rows).toHaveLength(3);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    expect(rows[0]?.slice(0, 3)).toEqual(['kind', 'name', 'how many']);
    expect(rows[1]?.slice(0, 4)).toEqual(['steering box', odd.name, '2', '420.5']);
  });

  // What a cell may not begin with: OWASP, CSV Injection.
  test('gives a spreadsheet no formula, and takes what keeps it from being one off again', () => {
    for (const sign of ['=', '+', '-', '@', '\t', '＝']) {
      const part = shelfPart({ kind: 'support', name: 'Bearing', note: `x${sign}`, bore: 19.2 });
      const evil = { ...part, name: `${sign}HYPERLINK("http://bad")`.trim() };
      const cell = fieldsOf(shelfCsv([evil], 'mm').replace('\uFEFF', ''))[1]?.[1];
      expect(cell?.[0]).toBe(sign === '\t' ? 'H' : "'");
      expect(names(shelfCsv([evil], 'mm'))).toEqual([evil.name]);
    }
  });

  test('is read with semicolons and decimal commas, with tabulators, with inches and fractions', () => {
    const read = (text: string) => readShelfCsv(text);
    const bearing = (bore: number) => ({
      ok: true,
      value: [{ kind: 'support', name: 'Bearing', note: '', count: 2, bore }],
    });
    expect(read('kind;name;how many;bearing bore (mm)\nsupport bearing;Bearing;2;19,23\n')).toEqual(
      bearing(19.23),
    );
    expect(read('kind\tname\thow many\tbearing bore (mm)\nsupport\tBearing\t2\t19.23')).toEqual(
      bearing(19.23),
    );
    expect(read('Kind,Name,How many,Bearing bore (in)\nSupport bearing,Bearing,2,0.75\n\n,,,\n')).toEqual(
      bearing(19.05),
    );
    expect(read('kind,name,how many,bearing bore (in)\nsupport,Bearing,2,3/4\n')).toEqual(bearing(19.05));
    expect(read('kind,name,how many,bearing bore (mm)\nsupport,Bearing,2,3/4 in\n')).toEqual(bearing(19.05));
  });

  test('is refused by line, column and reason, counted as an editor counts', () => {
    const head = 'kind,name,note,bearing bore (mm)\n';
    const good = 'support,"Two\nlines",,19\n';
    expect(refusal(`${head}${good}support,B,,wide\n`)).toBe(
      'line 4, column "bearing bore (mm)": "wide" is not a length; write for example 3 1/4, 3.25 in or 82.5 mm',
    );
    expect(refusal(`${head}${good}support,B,,-3\n`)).toBe(
      'line 4, column "bearing bore (mm)": must be more than 0, found -3',
    );
    expect(refusal(`${head}support,B,,\n`)).toBe('line 2, column "bearing bore (mm)": is missing');
    expect(refusal(`${head}support,,,19\n`)).toBe('line 2, column "name": is missing');
    expect(refusal(`${head}spanner,B,,19\n`)).toMatch(
      /^line 2, column "kind": "spanner" is not one of "steering box", /,
    );
    expect(refusal(`${head}rod end,B,,19\n`)).toBe(
      'line 2, column "bearing bore (mm)": is not a figure of a rod end: leave it empty',
    );
    expect(refusal(`${head}support,B,,19,7\n`)).toBe(
      'line 2: has more cells than the first line has columns',
    );
    expect(refusal(`${head}support,"B,,19\n`)).toBe(
      'line 2: a quotation mark is opened and not closed as it should be',
    );
    expect(refusal('kind,name,bearing bore\nsupport,B,19\n')).toBe(
      'line 1: the column "bearing bore" tells no unit: write "bearing bore (mm)" or "bearing bore (in)"',
    );
    expect(refusal('kind,name,colour\n')).toBe('line 1: the column "colour" is not one that a shelf has');
    expect(refusal('kind,name,name\n')).toBe('line 1: the column "name" stands there twice');
    expect(refusal('1,2,3\n')).toMatch(/^line 1: the column "1" is not one/);
    expect(refusal('name,note\nA,B\n')).toMatch(/^line 1: there is no column "kind"/);
    expect(refusal('')).toBe('there is nothing in it');
    expect(refusal(' '.repeat(4_000_001))).toMatch(/too large/);
  });

  test('tells plainly of a comma in a figure that it cannot be sure of', () => {
    expect(refusal('kind,name,bearing bore (mm)\nsupport,B,"19,23"\n')).toBe(
      'line 2, column "bearing bore (mm)": "19,23" has a decimal comma: write a point, or part the columns by semicolons',
    );
    expect(refusal('kind;name;bearing bore (mm)\nsupport;B;1.219,2\n')).toMatch(
      /grouped by commas or points/,
    );
    expect(refusal('kind;name;price;bearing bore (mm)\nsupport;A;12,5;19.2\n')).toMatch(
      /has a point where other figures of this file have a comma/,
    );
  });

  test('a joint’s ends are held to what their kind has', () => {
    const head = 'kind,name,joint,end 1,end 1 bore (mm),end 1 across flats (mm),end 2,end 2 bore (mm)\n';
    const joint = (cells: string) => `${head}joint,J,single,${cells}\n`;
    expect(refusal(joint('round bore to weld,19,14,round bore to weld,19'))).toBe(
      'line 2, column "end 1 across flats (mm)": is not a figure of this kind of end: leave it empty',
    );
    expect(refusal(joint('double-D with set screw,19,,round bore to weld,19'))).toBe(
      'line 2, column "end 1 across flats (mm)": is missing',
    );
    expect(refusal(joint('double-D with set screw,14,19,round bore to weld,19'))).toBe(
      'line 2, column "end 1 across flats (mm)": must be less than the bore, 14; found 19',
    );
    expect(refusal(joint(',19,,round bore to weld,19'))).toBe(
      'line 2, column "end 1 bore (mm)": needs "end 1" as well',
    );
  });
});

import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { LIMITS } from '../../../shared-math/findings/index.ts';
import { RIDE_RANGES } from '../../../shared-math/ride/ranges.ts';
import { FIELD, LETTERS, type Mark } from '../../../shared-math/words/sketches/index.ts';
import { findTerms, TERM_FAMILIES, TERMS, type TermId } from '../../../shared-math/words/terms/index.ts';
import { PdfPen } from '../../../src-main/output/pens/print-pen.ts';
import { EXPLAINED_LABELS, termOfLabel } from '../../../src-renderer/controls/label-terms.ts';
import { linkedWords } from '../../../src-renderer/shell/help/word-links.ts';

const IDS = Object.keys(TERMS) as TermId[];
const root = join(import.meta.dirname, '../../..');
const SCREEN = globSync('src-renderer/**/*.{svelte,ts}', { cwd: root })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => !path.endsWith('controls/label-terms.ts'))
  .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }));

/** The words that the page has to have, as a person with a tape measure asks for them. */
const ASKED = [
  'heave',
  'roll',
  'aim point',
  'zero-slope line',
  'ridge',
  'clock',
  'phasing',
  'stud',
  'scrub',
  'trail',
  'Ackermann',
  'wrap',
  'wind-up',
  'doubt',
  'kingpin inclination',
  'caster',
  'camber',
  'toe',
  'bump steer',
  'roll steer',
  'pitman arm',
  'drag link',
  'tie rod',
  'side steer',
  'cross steer',
  'sector shaft',
  'lock',
  'dead centre',
  'transmission angle',
  'joint angle',
  'double joint',
  'DD',
  'spline count',
  'serration',
  'lateral bar',
  'hairpin',
  'wishbone',
  'four-bar',
  'split rods',
  'ride height',
  'travel',
  'guess',
  'plan',
  'tape',
  'photo',
  'adjust',
  'verdict',
  'must fix',
  'check',
  'limit',
  'clearance',
] as const;

describe('the table of words', () => {
  test.each(IDS)('%s has all its parts', (id) => {
    const { name, what, measured, usual, sketch, see = [] } = TERMS[id];
    expect(name).not.toBe('');
    for (const sentence of [what, measured, usual.words]) {
      expect(sentence).toMatch(/[.]$/);
      // A figure that is not a number, or a blank in its place.
      expect(sentence).not.toMatch(/undefined|NaN|null| {2}/);
    }
    // One or two sentences; a list of kinds has one for each.
    expect(what.match(/[.?!](?= |$)/g)?.length).toBeLessThanOrEqual(5);
    expect(usual.source).not.toBe('');
    expect(sketch.alt).not.toBe('');
    expect(sketch.marks.length).toBeGreaterThan(3);
    for (const other of see) expect(IDS, `${id} names ${other}`).toContain(other);
  });

  test.each(ASKED)('%s is found first or among the first', (typed) => {
    const found = findTerms(typed);
    const holds = (id: TermId) =>
      [TERMS[id].name, ...(TERMS[id].also ?? [])].some((name) =>
        name.toLowerCase().includes(typed.toLowerCase()),
      );
    expect(found.slice(0, 3).some(holds), `${typed}: ${found.slice(0, 5).join(', ')}`).toBe(true);
  });

  test('every word is reached from another one', () => {
    const named = new Set(IDS.flatMap((id) => TERMS[id].see ?? []));
    const linked = new Set(
      IDS.flatMap((id) =>
        [TERMS[id].what, TERMS[id].measured].flatMap((sentence) =>
          linkedWords(sentence, id).flatMap((part) => part.id ?? []),
        ),
      ),
    );
    expect(IDS.filter((id) => !named.has(id) && !linked.has(id))).toEqual([]);
  });

  test('a sentence with its links is the sentence, and no word links to itself', () => {
    for (const id of IDS)
      for (const sentence of [TERMS[id].what, TERMS[id].measured]) {
        const parts = linkedWords(sentence, id);
        expect(parts.map(({ text }) => text).join('')).toBe(sentence);
        expect(parts.map((part) => part.id)).not.toContain(id);
      }
    expect(linkedWords('Both drag links and the pitman arm.', 'lock').flatMap(({ id }) => id ?? [])).toEqual([
      'drag-link',
      'pitman-arm',
    ]);
  });

  test('each stands in one family, once', () => {
    const all = TERM_FAMILIES.flatMap(({ terms }) => Object.keys(terms));
    expect(all).toHaveLength(new Set(all).size);
    expect(new Set(all)).toEqual(new Set(IDS));
    const names = IDS.map((id) => TERMS[id].name.toLowerCase());
    expect(names).toHaveLength(new Set(names).size);
  });

  test('what is usual is what the verdict holds it to', () => {
    const { casterLeast, casterMost, bumpSteerWorst, jointSingle } = LIMITS;
    expect(TERMS.caster.usual).toEqual({
      words: `${casterLeast.usual}° to ${casterMost.usual}°.`,
      source: casterLeast.source,
    });
    expect(TERMS['bump-steer'].usual.words).toContain(`${bumpSteerWorst.usual}°`);
    expect(TERMS['joint-angle'].usual.words).toContain(`${jointSingle.usual}°`);
    // 25.4 mm to the inch: a thirty-second of one is 0.794 mm, an eighth 3.175 mm.
    expect(TERMS.toe.usual.words).toBe('1/32 in (0.8 mm) to 1/8 in (3.2 mm).');
    const { rideFrequency, dampingRatio } = RIDE_RANGES;
    expect(TERMS['ride-frequency'].usual.words).toBe(
      `${rideFrequency?.least} to ${rideFrequency?.most} bounces a second, a damping ratio of ${dampingRatio?.least} to ${dampingRatio?.most}.`,
    );
  });

  test('the angle in space of the example is that of its two views', () => {
    // tan² of the true angle is the sum of the tan² of the two views' angles: geometry.
    const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
    const space = (Math.atan(Math.hypot(tan(20), tan(15))) * 180) / Math.PI;
    expect(TERMS['apparent-angle'].usual.words).toContain(`${space.toFixed(1)}° in space`);
  });

  test('nothing typed finds all; nonsense finds none', () => {
    expect(findTerms(' ')).toEqual(IDS);
    expect(findTerms('xyzzy')).toEqual([]);
  });
});

describe('the sketches', () => {
  const pen = new PdfPen({ title: '', author: '', subject: '', date: new Date(0) });
  // The pen measures in mm on paper; a letter of the field is as many points high as it has units.
  const widthOf = (words: string) =>
    (pen.widthOf(words, { face: 'regular', size: LETTERS, colour: '#000000' }) * 72) / 25.4;
  const span = (mark: Extract<Mark, { kind: 'text' }>): readonly [number, number] => {
    const wide = widthOf(mark.words);
    const left = mark.align === 'left' ? mark.x : mark.align === 'right' ? mark.x - wide : mark.x - wide / 2;
    return [left, left + wide];
  };

  test.each(IDS)('%s stays in its field, and its letters lie apart', (id) => {
    const texts = TERMS[id].sketch.marks.filter((mark) => mark.kind === 'text' && mark.words !== '');
    const boxes = texts.map((mark) => {
      const text = mark as Extract<Mark, { kind: 'text' }>;
      const [left, right] = span(text);
      return { words: text.words, left, right, top: text.y - 0.72 * LETTERS, bottom: text.y + 0.2 * LETTERS };
    });
    for (const box of boxes) {
      expect(box.left, box.words).toBeGreaterThanOrEqual(0);
      expect(box.right, box.words).toBeLessThanOrEqual(FIELD.width);
      expect(box.top, box.words).toBeGreaterThanOrEqual(0);
      expect(box.bottom, box.words).toBeLessThanOrEqual(FIELD.height);
    }
    for (const [i, a] of boxes.entries())
      for (const b of boxes.slice(i + 1))
        expect(
          a.right < b.left || b.right < a.left || a.bottom < b.top || b.bottom < a.top,
          `${a.words} and ${b.words}`,
        ).toBe(true);
    for (const mark of TERMS[id].sketch.marks)
      if (mark.kind === 'line')
        mark.at.forEach((value, i) => {
          expect(value).toBeGreaterThanOrEqual(-1);
          expect(value).toBeLessThanOrEqual(i % 2 === 0 ? FIELD.width + 1 : FIELD.height + 1);
        });
  });
});

describe('dotted words', () => {
  test('every label that is explained stands on the screen', () => {
    const texts = SCREEN.map(({ text }) => text).join('\n');
    const missing = EXPLAINED_LABELS.filter(
      (label) => !["'", '"', '>', '`'].some((before) => texts.includes(`${before}${label}`)),
    );
    expect(missing).toEqual([]);
  });

  test('every word that is named in a component is in the table', () => {
    const named = SCREEN.flatMap(({ path, text }) =>
      [...text.matchAll(/<Term id="([^"]+)"/g)].map(([, id]) => ({ path, id: id as string })),
    );
    expect(named.length).toBeGreaterThan(2);
    expect(named.filter(({ id }) => !Object.hasOwn(TERMS, id))).toEqual([]);
  });

  test('a label goes by itself or by what stands before its comma', () => {
    expect(termOfLabel('Camber, left wheel')).toBe('camber');
    expect(termOfLabel('Axle, wheels, brakes')).toBe('sprung');
    expect(termOfLabel('constructor')).toBeUndefined();
    expect(termOfLabel('Name')).toBeUndefined();
  });
});

import { describe, expect, test } from 'vitest';
import {
  type Answer,
  answerOf,
  newQuestion,
  QUESTION_KINDS,
  type Question,
  type QuestionOf,
  questionSchema,
  saysAnything,
} from '../../../shared-math/counter/index.ts';
import type { JointSide, ShaftEnd } from '../../../shared-math/layout/index.ts';
import { expectClose } from '../../support/close.ts';

const INCHES = { unit: 'in', fraction: 16 } as const;
const IN = 25.4;
const POUND = 4.4482216152605;

const answer = (question: Question, limits = {}): Answer => answerOf(question, INCHES, limits);
const textOf = ({ headline, parts, assumed }: Answer) =>
  [
    headline,
    ...parts.flatMap(({ lines = [], table }) => [
      ...lines.map(({ words }) => words),
      ...(table?.rows.flat() ?? []),
    ]),
    ...assumed.map(({ words }) => words),
  ].join('\n');

describe('a question of which nothing was said', () => {
  test.each(QUESTION_KINDS)('%s: waits, says what to ask, and defers to makers and codes', (kind) => {
    const question = newQuestion(kind);
    expect(saysAnything(question)).toBe(false);
    expect(questionSchema.safeParse(question).success).toBe(true);
    const { tone, headline, parts, cautions } = answer(question);
    expect(tone).toBe('waiting');
    expect(headline).toMatch(/^Ask /);
    expect(parts).toEqual([]);
    expect(cautions.map(({ words }) => words).join(' ')).toMatch(/local code, the parts’ makers/);
  });
});

describe('which spline', () => {
  const asked = (said: Partial<QuestionOf<'spline'>>) => ({
    ...newQuestion('spline'),
    over: 'circle' as const,
    ...said,
  });

  // Outside diameters (N + 1)/P of ANSI B92.1-1970 (R1993), computed from the formula; inches.
  test.each([
    [36, 48, 37 / 48],
    [35, 48, 36 / 48],
    [29, 40, 30 / 40],
  ])('%i teeth of pitch %i are found at their standard size', (counted, pitch, inches) => {
    const found = answer(asked({ counted, outsideDiameter: inches * IN }));
    expect(found.headline).toContain(`${counted} teeth`);
    const forms = found.parts.find(({ title }) => title === 'Nearest standard forms')?.table?.rows ?? [];
    expect(forms.length).toBeGreaterThan(0);
    for (const [name, size] of forms) {
      expect(name).toContain(`${counted} teeth, ${pitch}/${2 * pitch} pitch`);
      expectClose(Number.parseFloat(size as string), inches, 0.0006);
    }
  });

  test('one size, three pressure angles: not settled until an eye has decided', () => {
    const said = asked({ counted: 36, outsideDiameter: (37 / 48) * IN });
    expect(answer(said)).toMatchObject({ tone: 'attention' });
    expect(answer(said).headline).toContain('form not settled');
    const chosen = answer({ ...said, chosen: '36 teeth, 48/96 pitch, 45°' });
    expect(chosen.headline).toContain('45°');
    expect(textOf(chosen)).toContain('by eye on the flanks');
  });

  test('a count from a photo says so, and a measure that is none is refused', () => {
    const said = asked({ counted: 36, outsideDiameter: 19.6, fromPhoto: true, missing: 0 });
    expect(textOf(answer(said))).toContain('counted from a photo');
    expect(textOf(answer(said))).not.toContain('No tooth is missing');
    expect(answer({ ...said, counted: 2 })).toMatchObject({ tone: 'stop' });
  });
});

describe('what fits what', () => {
  const DD: ShaftEnd = { kind: 'double-d', diameter: 0.75 * IN, acrossFlats: 0.56 * IN };
  const SPLINE = { form: 'involute-45', teeth: 36, pitch: 48, diameter: (37 / 48) * IN } as const;
  const end: ShaftEnd = { kind: 'spline', ...SPLINE };
  const asked = (said: Partial<QuestionOf<'fit'>>) => answer({ ...newQuestion('fit'), ...said });

  test.each<[string, ShaftEnd, JointSide, Answer['tone'], RegExp]>([
    [
      'alike',
      DD,
      { kind: 'double-d-pinch-bolt', bore: 19.1, acrossFlats: 14.27, depth: 32 },
      'good',
      /^They go together/,
    ],
    [
      'a spline into flats',
      end,
      { kind: 'double-d-pinch-bolt', bore: 19.1, acrossFlats: 14.27 },
      'stop',
      /does not go into a double-D bore/,
    ],
    [
      'another count',
      end,
      { kind: 'spline', ...SPLINE, teeth: 35 },
      'stop',
      /36 teeth do not go into a spline of 35/,
    ],
    [
      'a form not known',
      { ...end, form: 'unidentified' },
      { kind: 'spline', ...SPLINE },
      'attention',
      /^Trial-fit first/,
    ],
    ['flats into a round bore', DD, { kind: 'weld', bore: 19.1 }, 'stop', /flats leave two gaps/],
  ])('%s', (_, given, side, tone, headline) => {
    const found = asked({ end: given, side });
    expect(found.tone).toBe(tone);
    expect(found.headline).toMatch(headline);
    // What does not go together says what would: another joint, another shaft, and an adapter only where there is one.
    const mends = found.parts
      .find(({ title }) => title === 'What would mend it')
      ?.lines?.map(({ words }) => words);
    if (tone !== 'stop') expect(mends).toBeUndefined();
    else {
      expect(mends?.[0]).toMatch(/^Take the joint with /);
      expect(mends?.[2]).toMatch(side.kind === 'weld' ? /^No adapter helps/ : /^Or put an adapter between/);
    }
  });

  test('a bore less deep than it is wide is said to be short', () => {
    const side: JointSide = { kind: 'double-d-pinch-bolt', bore: 19.1, acrossFlats: 14.27, depth: 12 };
    expect(textOf(asked({ end: DD, side }))).toMatch(/takes only .* at least its own diameter/);
  });

  test('two shafts’ ends take a joint with both, and flats that cut nothing are refused', () => {
    const found = asked({ meets: 'shaft', end: DD, other: end });
    expect(found.headline).toMatch(
      /^Take a joint with a double-D .* at one end and a spline of 36 teeth .* at the other/,
    );
    expect(asked({ end: { ...DD, acrossFlats: 20 } })).toMatchObject({ tone: 'stop' });
  });
});

describe('side or cross, manual or assisted', () => {
  const asked = (said: Partial<QuestionOf<'arrangement'>>) => ({
    ...newQuestion('arrangement'),
    frontAxleLoad: 1100 * POUND,
    ...said,
  });

  test('a header on the driver’s side leads to side steer, one on the other does not', () => {
    expect(answer(asked({ headers: 'left' })).headline).toMatch(/^Begin from side steer/);
    expect(answer(asked({ headers: 'right', driverSide: 'right' })).headline).toMatch(
      /^Begin from side steer/,
    );
    expect(answer(asked({ headers: 'right' })).headline).toMatch(/^Begin from cross steer/);
  });

  test('a heavy front leads to cross steer, and to assistance where it can be had', () => {
    const heavy = asked({ frontAxleLoad: 2200 * POUND });
    expect(answer({ ...heavy, power: 'yes' }).headline).toBe('Begin from cross steer, assisted.');
    const without = answer({ ...heavy, power: 'no' });
    expect(without.headline).toBe('Begin from cross steer, manual.');
    expect(textOf(without)).toMatch(/look for assistance, a slower box/);
  });

  test('parking grows with the load as the formula has it: in proportion', () => {
    const least = (pounds: number) => {
      const rows =
        answer(asked({ frontAxleLoad: pounds * POUND })).parts.find(({ table }) => table)?.table?.rows ?? [];
      return Number.parseFloat(rows.find(([what]) => what?.startsWith('Parking'))?.[1] ?? '');
    };
    // T = μ W √(B²/8 + E²), `parkingEffort` with its own source: twice the load, twice the force, to a rounded pound.
    expect(Math.abs(least(4000) - 2 * least(2000))).toBeLessThanOrEqual(1.5);
  });

  test('every rule says that it is common practice or where it comes from', () => {
    for (const said of [{ headers: 'left' }, { frontAxleLoad: 9000 }] as const) {
      const why = answer(asked(said)).parts.find(({ title }) => title === 'Why')?.lines?.[0]?.words;
      expect(why).toContain('common practice, no published source');
    }
  });
});

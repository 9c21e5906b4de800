import type { ShaftEnd } from '../layout/index.ts';
import { sideForEnd } from '../shaft/index.ts';
import {
  CALIPER_UNCERTAINTY,
  identifySpline,
  type SplineCandidate,
  type SplineIdentity,
} from '../splines/index.ts';
import { formatDecimal, type LengthStyle, MM_PER_INCH } from '../units/index.ts';
import { type Answer, type AnswerLine, type Assumed, listed, waiting } from './answer.ts';
import { END_CAUTIONS, PRACTICE } from './counter-cautions.ts';
import type { QuestionOf } from './questions.ts';

type SplineQuestion = QuestionOf<'spline'>;

/** As a caliper reads: thousandths of an inch, hundredths of a millimetre. */
export function caliperWords(mm: number, { unit }: LengthStyle): string {
  return unit === 'in' ? `${formatDecimal(mm / MM_PER_INCH, 3)} in` : `${formatDecimal(mm, 2)} mm`;
}

/** The form that was decided for: by eye, or because it is the only one. */
export function chosenForm(question: SplineQuestion, found: SplineIdentity): SplineCandidate | undefined {
  return (
    found.candidates.find(({ name }) => name === question.chosen) ??
    (found.verdict === 'match' ? found.candidates[0] : undefined)
  );
}

/** What the splines' own identification says; undefined until both caliper and count are given. */
export function identityOf(question: SplineQuestion, style: LengthStyle) {
  const { outsideDiameter, counted, over, missing = 0 } = question;
  if (outsideDiameter === undefined || counted === undefined) return undefined;
  const otherHalf = over === 'half' ? question.otherHalf : undefined;
  return identifySpline(
    { outsideDiameter, counted, over, otherHalf, missing, uncertainty: CALIPER_UNCERTAINTY },
    style,
  );
}

/** The end as the drawing takes it over: its form is left open where nothing has decided it. */
export function splineEnd(question: SplineQuestion, style: LengthStyle): ShaftEnd | undefined {
  const identity = identityOf(question, style);
  const { outsideDiameter } = question;
  if (!identity?.ok || outsideDiameter === undefined) return undefined;
  const form = chosenForm(question, identity.value);
  return {
    kind: 'spline',
    form: form?.form ?? 'unidentified',
    teeth: form?.teeth ?? identity.value.teeth,
    ...(form?.pitch === undefined ? {} : { pitch: form.pitch }),
    ...(form?.module === undefined ? {} : { module: form.module }),
    diameter: Math.round(outsideDiameter * 1000) / 1000,
  };
}

function assumedOf(question: SplineQuestion, style: LengthStyle): Assumed[] {
  const caliper = caliperWords(CALIPER_UNCERTAINTY, style);
  return [
    ...(question.missing === undefined
      ? [
          {
            field: 'missing',
            figure: 'none',
            words: 'No tooth is missing among those counted.',
          },
        ]
      : []),
    {
      field: '',
      figure: caliper,
      words: `The caliper is right to ${caliper}: a workshop caliper on a worn crest (${PRACTICE}).`,
    },
  ];
}

/**
 * Which spline a caliper and a count make likely. Units: mm in, `style` out.
 * Outcomes: an answer that waits for what is missing, one that says what is wrong with the measure, or the forms.
 * Source, checks: `identifySpline`; tests/unit/counter/answers.test.ts.
 */
export function splineAnswer(question: SplineQuestion, style: LengthStyle): Answer {
  const identity = identityOf(question, style);
  if (!identity) {
    const missing = [
      ...(question.outsideDiameter === undefined ? ['the size over the teeth, by caliper'] : []),
      ...(question.counted === undefined ? ['the count of teeth'] : []),
    ];
    return waiting(`Ask for ${listed(missing)}.`, END_CAUTIONS, assumedOf(question, style));
  }
  if (!identity.ok) return { ...waiting(`This cannot be: ${identity.failure}.`, END_CAUTIONS), tone: 'stop' };
  const found = identity.value;
  const form = chosenForm(question, found);
  const end = splineEnd(question, style) as ShaftEnd;
  const byEye = form !== undefined && form.name === question.chosen && found.verdict !== 'match';
  const sure = form !== undefined && form.fit === 'fits' && form.countDifference === 0;
  const lines: AnswerLine[] = [
    { words: `${found.teeth} teeth; trade name ${found.tradeName}.` },
    { words: found.sentence, tone: sure && !byEye ? 'good' : 'look' },
    ...(byEye
      ? [{ words: `Taken as ${form.name}, by eye on the flanks: trial-fit it.`, tone: 'look' } as const]
      : []),
    ...(question.fromPhoto ? [{ words: 'The teeth were counted from a photo.' }] : []),
    { words: `Ask the maker for a joint with ${sideForEnd(end, style)}.` },
  ];
  return {
    tone: sure ? 'good' : 'attention',
    headline: form
      ? `${form.name}, ${found.teeth} teeth on ${caliperWords(question.outsideDiameter as number, style)}${sure && !byEye ? '' : ': trial-fit first'}.`
      : `${found.teeth} teeth on ${caliperWords(question.outsideDiameter as number, style)}, form not settled: trial-fit first.`,
    parts: [
      { title: 'What it is', lines },
      ...(found.candidates.length > 0
        ? [
            {
              title: 'Nearest standard forms',
              table: {
                head: ['Form', 'Over the teeth', 'Yours is off by', 'Standard', 'Note'],
                rows: found.candidates.map((each) => [
                  each.name,
                  caliperWords(each.outsideDiameter, style),
                  `${each.difference > 0 ? '+' : ''}${caliperWords(each.difference, style)}`,
                  each.standard,
                  each.note,
                ]),
              },
            },
          ]
        : []),
      ...(found.warnings.length > 0
        ? [{ title: 'Look to', lines: found.warnings.map((words) => ({ words, tone: 'look' as const })) }]
        : []),
    ],
    assumed: assumedOf(question, style),
    cautions: END_CAUTIONS,
  };
}

import {
  type Arrangement,
  type ArrangementName,
  arrangementRows,
  assistedWords,
  type CarFacts,
  DRIVEN_WORDS,
  parkingWords,
  proposeArrangements,
  USUAL_FRAME_WIDTH,
} from '../arrange/index.ts';
import { capitalised } from '../capitalised.ts';
import { limitInForce, type ShopLimits } from '../findings/index.ts';
import {
  type LayoutDocument,
  PLAIN_LAYOUT,
  readLayout,
  refusalLine,
  withDriverSide,
} from '../layout/index.ts';
import { formatForce, formatLength, formatLoad, type LengthStyle } from '../units/index.ts';
import { type Answer, type AnswerLine, type AnswerPart, type Assumed, listed, waiting } from './answer.ts';
import { ARRANGEMENT_CAUTIONS, PRACTICE } from './counter-cautions.ts';
import type { QuestionOf } from './questions.ts';

type ArrangementQuestion = QuestionOf<'arrangement'>;

/** N on the front axle above which builders leave a side box and its rail: common practice, no published source. */
const HEAVY_FRONT = 6500;

/** What was said of the car, and the rest as it is on the plain car. */
export interface AskedCar {
  readonly document: LayoutDocument;
  readonly facts: CarFacts;
  readonly assumed: readonly Assumed[];
}

function assumedOf(question: ArrangementQuestion, style: LengthStyle): Assumed[] {
  const { car } = PLAIN_LAYOUT;
  const length = (mm: number) => formatLength(mm, style);
  const rows: readonly (readonly [field: keyof ArrangementQuestion, figure: string, words: string])[] = [
    [
      'frameWidth',
      length(USUAL_FRAME_WIDTH),
      `The frame is ${length(USUAL_FRAME_WIDTH)} wide beside the axle (${PRACTICE}).`,
    ],
    ['tyreWidth', length(car.tyreWidth), `The tyres are ${length(car.tyreWidth)} wide: the plain car’s.`],
    ['wheelbase', length(car.wheelbase), `The wheelbase is ${length(car.wheelbase)}: the plain car’s.`],
    [
      'handwheelDiameter',
      length(2 * car.handwheelRadius),
      `The handwheel is ${length(2 * car.handwheelRadius)} across: the plain car’s.`,
    ],
    ['engine', 'leaves room', 'The engine leaves room behind the axle.'],
    ['headers', 'none there', 'No header runs beside the rail.'],
    ['power', 'no', 'There is no pump or motor for assistance.'],
    ['driven', 'open road', 'The car is driven on the open road.'],
    ['driverSide', 'left', 'The driver sits on the left.'],
  ];
  return rows.flatMap(([field, figure, words]) =>
    question[field] === undefined ? [{ field, figure, words }] : [],
  );
}

/** The plain car with what was said of this one. */
export function askedCar(question: ArrangementQuestion, style: LengthStyle): AskedCar {
  const { frontAxleLoad, tyreWidth, wheelbase, handwheelDiameter } = question;
  const { car } = PLAIN_LAYOUT;
  const document = withDriverSide(
    {
      ...PLAIN_LAYOUT,
      car: {
        ...car,
        ...(frontAxleLoad === undefined ? {} : { frontAxleLoad }),
        ...(tyreWidth === undefined ? {} : { tyreWidth }),
        ...(wheelbase === undefined ? {} : { wheelbase }),
        ...(handwheelDiameter === undefined ? {} : { handwheelRadius: handwheelDiameter / 2 }),
      },
    },
    question.driverSide ?? 'left',
  );
  return {
    document,
    facts: {
      frameWidth: question.frameWidth ?? USUAL_FRAME_WIDTH,
      engineFillsFrame: question.engine === 'in the way',
      driven: question.driven ?? 'open-road',
    },
    assumed: assumedOf(question, style),
  };
}

/** What leads to an arrangement, and why. */
export interface Leaning {
  readonly name: ArrangementName;
  readonly why: readonly string[];
}

const figuresOf = (arrangements: readonly Arrangement[], name: ArrangementName) =>
  arrangements.find((each) => each.name === name)?.figures;

/** Which of side and cross steer to begin from: by the room, then by the load, then by what one wheel over a bump does. */
function sideOrCross(
  question: ArrangementQuestion,
  { document }: AskedCar,
  arrangements: readonly Arrangement[],
  style: LengthStyle,
): { readonly way: 'side' | 'cross'; readonly why: string } {
  const driver = question.driverSide ?? 'left';
  const { headers } = question;
  if (headers === driver || headers === 'both')
    return {
      way: 'side',
      why: `A header runs on the driver’s side, where a cross-steer box stands between rail and engine: a side box outside the rail keeps clear of it (${PRACTICE}).`,
    };
  const load = document.car.frontAxleLoad;
  if (load > HEAVY_FRONT)
    return {
      way: 'cross',
      why: `${formatLoad(load, style.unit)} on the front axle is more than the ${formatLoad(HEAVY_FRONT, style.unit)} that a side box and its rail are usually given (${PRACTICE}).`,
    };
  const [side, cross] = (['side-manual', 'cross-manual'] as const).map(
    (name) => figuresOf(arrangements, name)?.worstBumpSteer ?? Number.POSITIVE_INFINITY,
  ) as [number, number];
  if (!Number.isFinite(side) && !Number.isFinite(cross))
    return { way: 'side', why: 'Neither could be laid on this car as it stands.' };
  return side <= cross
    ? {
        way: 'side',
        why: 'As laid here, side steer leaves the wheels less to steer by themselves over bumps.',
      }
    : {
        way: 'cross',
        why: 'As laid here, cross steer leaves the wheels less to steer by themselves over bumps.',
      };
}

/** Whether it wants assistance: by what parking takes at the rim without. */
function manualOrAssisted(
  question: ArrangementQuestion,
  way: 'side' | 'cross',
  arrangements: readonly Arrangement[],
  style: LengthStyle,
  limits: ShopLimits,
): { readonly assisted: boolean; readonly why: string } {
  const figures = figuresOf(arrangements, `${way}-manual`);
  const { value, source } = limitInForce('rimForce', limits);
  if (!figures) return { assisted: false, why: 'What parking takes could not be worked out on this car.' };
  const force = (newtons: number) => formatForce(newtons, style.unit);
  const takes = `Parking takes roughly ${parkingWords(figures, style.unit)} at the rim by hand`;
  if (figures.rimForceMost <= value)
    return { assisted: false, why: `${takes}, within ${force(value)} (${source}).` };
  return question.power === 'yes'
    ? { assisted: true, why: `${takes}, past ${force(value)} (${source}), and assistance can be had.` }
    : {
        assisted: false,
        why: `${takes}, past ${force(value)} (${source}): look for assistance, a slower box, a larger handwheel or narrower tyres.`,
      };
}

/** Where to begin, by rules that are said with it; the choice is the person's. */
export function leaning(
  question: ArrangementQuestion,
  asked: AskedCar,
  arrangements: readonly Arrangement[],
  style: LengthStyle,
  limits: ShopLimits,
): Leaning {
  const { way, why } = sideOrCross(question, asked, arrangements, style);
  const effort = manualOrAssisted(question, way, arrangements, style, limits);
  return { name: `${way}-${effort.assisted ? 'assisted' : 'manual'}`, why: [why, effort.why] };
}

function comparison(
  arrangements: readonly Arrangement[],
  { document }: AskedCar,
  style: LengthStyle,
): AnswerPart {
  const figure = (words: (figures: NonNullable<Arrangement['figures']>) => string) =>
    arrangements.map(({ figures }) => (figures ? words(figures) : 'does not steer'));
  return {
    title: 'The four beside one another',
    table: {
      head: ['', ...arrangements.map(({ title }) => title)],
      rows: [
        ...arrangementRows(style).map(({ what, words }) => [what, ...figure(words)]),
        [
          'Parking at the rim, roughly',
          ...arrangements.map(({ name, figures }) => {
            if (!figures) return 'does not steer';
            const manual = parkingWords(figures, style.unit);
            return name.endsWith('assisted')
              ? `${assistedWords(document.car.handwheelRadius, style.unit)}; ${manual} if the assistance fails`
              : manual;
          }),
        ],
      ],
    },
  };
}

function saidPart(question: ArrangementQuestion, { document }: AskedCar, style: LengthStyle): AnswerPart {
  const { car } = document;
  const length = (mm: number) => formatLength(mm, style);
  const driven = DRIVEN_WORDS.find(([value]) => value === question.driven)?.[1];
  const said = [
    `${formatLoad(car.frontAxleLoad, style.unit)} on the front axle`,
    ...(question.frameWidth === undefined ? [] : [`frame ${length(question.frameWidth)} wide`]),
    ...(question.tyreWidth === undefined ? [] : [`tyres ${length(question.tyreWidth)} wide`]),
    ...(question.wheelbase === undefined ? [] : [`wheelbase ${length(question.wheelbase)}`]),
    ...(question.handwheelDiameter === undefined
      ? []
      : [`handwheel ${length(question.handwheelDiameter)} across`]),
    ...(question.engine === undefined
      ? []
      : [`the engine ${question.engine === 'free' ? 'leaves room' : 'is in the way'} behind the axle`]),
    ...(question.headers === undefined
      ? []
      : [
          question.headers === 'none'
            ? 'no header beside the rail'
            : `headers on ${question.headers === 'both' ? 'both sides' : `the ${question.headers}`}`,
        ]),
    ...(driven === undefined ? [] : [`driven ${driven}`]),
  ];
  return { title: 'What was said', lines: [{ words: capitalised(`${listed(said)}.`) }] };
}

/**
 * Side steer and cross steer, manual and assisted, on the plain car with what was said of this one, and where to begin.
 * Units: mm, N in, `style` out. Outcomes: an answer that waits for the load, says what cannot be, or has the comparison.
 * Source:   as `proposeArrangements`; the rules of the leaning are common practice, no published source, and said so.
 * Checked:  tests/unit/counter/answers.test.ts.
 */
export function arrangementAnswer(
  question: ArrangementQuestion,
  style: LengthStyle,
  limits: ShopLimits,
): Answer {
  if (question.frontAxleLoad === undefined)
    return waiting(
      'Ask what the front axle carries, by scales under the wheels or as a guess.',
      ARRANGEMENT_CAUTIONS,
      assumedOf(question, style),
    );
  const asked = askedCar(question, style);
  const read = readLayout(asked.document);
  if (!read.ok)
    return {
      ...waiting(`This cannot be: ${refusalLine(read.failure)}.`, ARRANGEMENT_CAUTIONS),
      tone: 'stop',
    };
  const arrangements = proposeArrangements(asked.document, asked.facts);
  const lean = leaning(question, asked, arrangements, style, limits);
  const title = (name: ArrangementName) => arrangements.find((each) => each.name === name)?.title ?? name;
  const chosen = question.chosen ?? lean.name;
  const steers = figuresOf(arrangements, chosen) !== undefined;
  const reasons = arrangements.map(
    ({ title: name, reasons: said }): AnswerPart => ({
      title: name,
      lines: said.map((words): AnswerLine => ({ words })),
    }),
  );
  return {
    tone: steers ? 'good' : 'stop',
    headline: steers
      ? question.chosen === undefined
        ? `Begin from ${title(chosen).toLowerCase()}.`
        : `${title(chosen)}, as the customer chose${chosen === lean.name ? '' : `; the board would begin from ${title(lean.name).toLowerCase()}`}.`
      : `${title(chosen)} does not steer on this car as laid.`,
    parts: [
      {
        title: 'Why',
        lines: [
          ...lean.why.map((words): AnswerLine => ({ words })),
          { words: 'A leaning, not a verdict: the choice is the customer’s and the builder’s.' },
        ],
      },
      saidPart(question, asked, style),
      comparison(arrangements, asked, style),
      ...reasons,
    ],
    assumed: asked.assumed,
    cautions: ARRANGEMENT_CAUTIONS,
  };
}

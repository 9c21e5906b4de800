import { capitalised } from '../capitalised.ts';
import { jointLimits, limitInForce, type ShopLimits } from '../findings/index.ts';
import type { ShaftDocument } from '../layout/index.ts';
import {
  checkMeetings,
  checkRoute,
  clockSteps,
  cutList,
  makingSteps,
  noRouteSentence,
  partsList,
  partsWords,
  type Route,
  type RouteProposal,
  STATUS_WORDS,
  type Suggestion,
  sizeWords,
  supportSentence,
  USUAL_SEAT,
} from '../shaft/index.ts';
import { formatDegrees, formatLength, type LengthStyle, MM_PER_INCH, toDegrees } from '../units/index.ts';
import { type Answer, type AnswerLine, type AnswerPart, type Assumed, listed, waiting } from './answer.ts';
import { PRACTICE, SHAFT_CAUTIONS } from './counter-cautions.ts';
import { partProblem } from './fit-answer.ts';
import type { QuestionOf } from './questions.ts';
import { shaftTaken } from './shaft-routes.ts';
import { assumedDirections, type ShaftRun, shaftRun } from './shaft-run.ts';
import { sketchesOf } from './shaft-sketch.ts';

type ShaftQuestion = QuestionOf<'shaft'>;

/** in. Lengths that bars for shafts are sold in: common practice, no published source. */
const SOLD_IN = [9, 12, 18, 24, 30, 36, 48];

const angle = (radians: number) => formatDegrees(toDegrees(radians), 1);
/** With its first letter small, for the middle of a list. */
const lowered = (words: string) => `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
const COUNTED = { 1: 'One joint', 2: 'Two joints', 3: 'Three joints' } as const;

/** The shortest of the usual bars that a piece can be cut from: "sold 18 in long". */
function barWords(mm: number, style: LengthStyle): string {
  const bar = SOLD_IN.find((inches) => inches * MM_PER_INCH >= mm);
  return bar === undefined
    ? 'longer than bars are usually sold: ask for its length'
    : `from a bar ${sizeWords(bar * MM_PER_INCH, style)} long`;
}

/** "Two single joints, 24.3° and 18.0°; one shaft, 14 3/8 in between its joints; no support". */
function headlineOf(shaft: ShaftDocument, route: Route, style: LengthStyle): string {
  const bends = listed(route.joints.map((joint) => angle(joint.angle)));
  const kinds = partsWords({ ...shaft, shafts: [], supports: [] });
  const lengths = listed(route.lengths.map((mm) => formatLength(mm, style)));
  const shafts =
    route.lengths.length === 0
      ? 'no shaft between'
      : `${route.lengths.length === 1 ? 'shaft' : 'shafts'} ${lengths} between joint centres`;
  const supports =
    shaft.supports.length === 0
      ? 'no support'
      : `${shaft.supports.length} support ${shaft.supports.length === 1 ? 'bearing' : 'bearings'}`;
  return `${capitalised(kinds)} at ${bends}; ${shafts}; ${supports}.`;
}

function runPart(
  proposal: RouteProposal,
  shaft: ShaftDocument,
  route: Route,
  style: LengthStyle,
  limits: ShopLimits,
): AnswerPart {
  const kinds = [...new Set(route.joints.map(({ kind }) => kind))];
  const sources = kinds.map((kind): string => {
    const { source } = limitInForce(kind === 'single' ? 'jointSingle' : 'jointDouble', limits);
    return `${kind} joint, ${source}`;
  });
  const last = route.joints.length - 1;
  const joints = route.joints.map((joint, i): AnswerLine => {
    const where = last === 0 ? '' : i === 0 ? ', at the column' : i === last ? ', at the box' : ', between';
    const within = joint.angle <= joint.limit;
    return {
      words: `Joint ${i + 1}${where}: ${joint.kind}, bends ${angle(joint.angle)}, ${within ? 'within' : 'past'} its limit of ${formatDegrees(toDegrees(joint.limit), 0)}.`,
      tone: within ? 'good' : 'stop',
    };
  });
  const cuts = cutList(shaft, route);
  const shafts = route.lengths.map((mm, i): AnswerLine => {
    const cut = cuts[i];
    const long =
      cut?.length === undefined
        ? (cut?.noRoom ?? 0) > 0
          ? 'the joints’ ends meet before a shaft fits between'
          : 'cut length once the joints are in hand'
        : `cut ${formatLength(cut.length, style)}, ${barWords(cut.length, style)}`;
    return { words: `Shaft ${i + 1}: ${formatLength(mm, style)} between joint centres; ${long}.` };
  });
  const { column, box } = route;
  const longer = (
    [
      ['column’s end', column.along],
      ['box’s input', box.along],
    ] as const
  ).flatMap(([name, along]): AnswerLine[] =>
    along > USUAL_SEAT.reach
      ? [
          {
            words: `The joint stands ${formatLength(along, style)} past the ${name}: only where that can be had longer.`,
            tone: 'look',
          },
        ]
      : [],
  );
  const swing = formatDegrees(toDegrees(proposal.motion.swing), 2);
  return {
    title: 'The run',
    lines: [
      ...joints,
      { words: `Where the limits come from: ${sources.join('; ')}. The maker’s figure rules.` },
      ...shafts,
      ...longer,
      {
        words: `Clocked as below, the box swings ${swing} against the handwheel over a turn; that is the least that these angles leave.`,
      },
    ],
  };
}

function routesPart(routes: readonly Suggestion[], taken: Suggestion, style: LengthStyle): AnswerPart {
  const length = (mm: number) => formatLength(mm, style);
  return {
    title: 'With one, two or three joints',
    table: {
      head: ['', 'Bends', 'Shafts', 'To fit', 'Verdict'],
      rows: [...routes]
        .sort((a, b) => a.joints - b.joints)
        .map(({ joints, outcome }) => {
          if (!outcome.ok) return [COUNTED[joints], '', '', '', noRouteSentence(outcome.failure, length)];
          const { route, shaft, withinLimits, worstShare } = outcome.value;
          const share = `hardest at ${Math.round(100 * worstShare)}% of its limit`;
          return [
            COUNTED[joints],
            listed(route.joints.map((joint) => angle(joint.angle))),
            route.lengths.length === 0 ? 'none' : listed(route.lengths.map(length)),
            partsWords(shaft),
            `${withinLimits ? 'Within limits' : 'Past a limit'}, ${share}${joints === taken.joints ? '; taken here' : ''}.`,
          ];
        }),
    },
  };
}

function endsPart(shaft: ShaftDocument, route: Route, style: LengthStyle): AnswerPart {
  const meetings = checkMeetings(shaft, route, style);
  const fitting = meetings.filter(({ status }) => status === 'fits');
  const untold = (['column', 'box'] as const).filter((part) => shaft[part].fit === undefined);
  return {
    title: 'Ends that fit',
    lines: [
      ...(fitting.length > 0
        ? [
            {
              words: `${capitalised(listed(fitting.map(({ name }) => lowered(name))))} ${STATUS_WORDS.fits}.`,
              tone: 'good',
            } as const,
          ]
        : []),
      ...meetings
        .filter(({ status }) => status === 'mismatch' || status === 'trial-fit')
        .map(
          ({ name, status, reason }): AnswerLine => ({
            words: `${name} ${STATUS_WORDS[status]}${reason === '' ? '' : `: ${reason}`}.`,
            tone: status === 'mismatch' ? 'stop' : 'look',
          }),
        ),
      ...untold.map(
        (part): AnswerLine => ({
          words: `The ${part === 'column' ? 'column’s end' : 'box’s input'} was not described: no joint can be ordered for it yet. Ask which spline, or how wide across the flats.`,
          tone: 'look',
        }),
      ),
    ],
  };
}

/** A route at the counter knows the two ends alone; the place Shaft is asked past what is drawn. */
const WAY_FREE: Assumed = {
  field: '',
  figure: '',
  words:
    'Nothing stands in the way from column to box: engine, headers, rails and pedals are not known here. To route the shaft past them, make a car of this and draw them.',
};

function answered(question: ShaftQuestion, run: ShaftRun, limits: ShopLimits, style: LengthStyle): Answer {
  const { routes, taken, shaft, route, proposal } = shaftTaken(question, run, jointLimits(limits));
  const base = { assumed: [...run.assumed, WAY_FREE], cautions: SHAFT_CAUTIONS };
  if (!taken || !shaft) {
    const why = (taken ?? routes[0])?.outcome;
    const reason =
      why && !why.ok ? noRouteSentence(why.failure, (mm) => formatLength(mm, style)) : 'No route was found.';
    const name = taken ? COUNTED[taken.joints] : 'No route';
    return {
      ...base,
      tone: 'stop',
      headline: `${name}: ${reason}`,
      parts: taken ? [routesPart(routes, taken, style)] : [],
    };
  }
  const clocks = clockSteps(shaft);
  const others = makingSteps(shaft, route, style).filter((step) =>
    clocks.every((clock) => clock.sentence !== step.sentence),
  );
  const words = (kinds: readonly string[]): AnswerLine[] =>
    others.filter(({ kind }) => kinds.includes(kind)).map(({ sentence: said }) => ({ words: said }));
  const longest = limitInForce('shaftSpan', limits);
  const { support, longSpans, straight } = checkRoute(shaft, route, longest.value);
  const spans = longSpans.map(
    ({ shaft: index, length }): AnswerLine => ({
      words: `Shaft ${index + 1} runs ${formatLength(length, style)} without a bearing, more than ${formatLength(longest.value, style)} (${longest.source}).`,
      tone: 'look',
    }),
  );
  const seats: Assumed = {
    field: '',
    figure: '',
    words: `Joints are bored ${formatLength(USUAL_SEAT.depth, style)} deep and ${formatLength(USUAL_SEAT.reach, style)} from face to centre (${PRACTICE}): measure those in hand before anything is cut.`,
  };
  const settled = proposal.withinLimits && question.columnFit && question.boxFit;
  return {
    ...base,
    assumed: [...run.assumed, WAY_FREE, ...(shaft.shafts.length > 0 ? [seats] : [])],
    tone: proposal.withinLimits ? (settled ? 'good' : 'attention') : 'stop',
    headline: headlineOf(shaft, route, style),
    parts: [
      { title: 'As it would run', sketches: sketchesOf(shaft, run.driverSide) },
      runPart(proposal, shaft, route, style, limits),
      routesPart(routes, taken, style),
      {
        title: 'Supports',
        lines: [
          {
            words:
              support.because === undefined
                ? 'None is called for: column and box hold the run between them.'
                : supportSentence(support),
          },
          ...words(['support']),
          ...spans,
        ],
      },
      endsPart(shaft, route, style),
      {
        title: 'To order',
        lines: partsList(shaft, route, style).map(({ count, words: part }) => ({
          words: `${count} × ${part}`,
        })),
      },
      {
        title: 'What to clock',
        lines: [
          ...clocks.map(
            ({ kind, sentence: words }): AnswerLine => ({
              words,
              ...(kind === 'warning' ? { tone: 'look' } : {}),
            }),
          ),
          { words: 'Notches, dimples, bolts and torques stand on the build sheet, once this is a car.' },
        ],
      },
      {
        title: 'Look to',
        lines: [
          ...straight.map(
            (joint): AnswerLine => ({
              words: `Joint ${joint + 1} runs all but straight: its needles stay on one spot and wear there (${PRACTICE}).`,
              tone: 'look',
            }),
          ),
          ...words(['warning', 'measure']).map((line) => ({ ...line, tone: 'look' as const })),
        ],
      },
    ].filter(({ lines, sketches, table }: AnswerPart) => (lines?.length ?? 0) > 0 || sketches || table),
  };
}

/**
 * Which joints, shafts and supports lead from the column to the box, past no obstacle. Units: mm, degrees in,
 * `style` out. Outcomes: an answer that waits for what is missing, says what cannot be, or has the route.
 * Source: routes as `suggestRoute`, making as `makingSteps`. Checked: tests/unit/counter/shaft-run.test.ts.
 */
export function shaftAnswer(question: ShaftQuestion, style: LengthStyle, limits: ShopLimits): Answer {
  const problem = partProblem(question.columnFit) || partProblem(question.boxFit);
  if (problem) return { ...waiting(`This cannot be: ${problem}.`, SHAFT_CAUTIONS), tone: 'stop' };
  const run = shaftRun(question, style);
  if (!run.ok) {
    const { kind, words } = run.failure;
    return kind === 'asks'
      ? waiting(words, SHAFT_CAUTIONS, assumedDirections(question, style))
      : { ...waiting(`This cannot be: ${words}.`, SHAFT_CAUTIONS), tone: 'stop' };
  }
  return answered(question, run.value, limits, style);
}

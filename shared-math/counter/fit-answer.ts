import { capitalised } from '../capitalised.ts';
import { flatProblems, type JointSide, type ShaftEnd } from '../layout/index.ts';
import {
  endForSide,
  endWords,
  judgeEnds,
  sideForEnd,
  sideWords,
  sizeWords,
  USUAL_JOINT_DEGREES,
} from '../shaft/index.ts';
import type { LengthStyle } from '../units/index.ts';
import { type Answer, type AnswerLine, waiting } from './answer.ts';
import { END_CAUTIONS, PRACTICE } from './counter-cautions.ts';
import type { QuestionOf } from './questions.ts';

type FitQuestion = QuestionOf<'fit'>;

/** Why a part cannot be as it was described; empty if it can. */
export function partProblem(part: ShaftEnd | JointSide | undefined): string {
  const [problem] = flatProblems('', part);
  return problem ? 'flats that cut nothing off the round are none: measure across the flats again' : '';
}

function waitsFor(question: FitQuestion): string {
  const { end, side, other, meets } = question;
  if (!end) return 'Ask what the shaft’s end is: round, double-D or splined, with its sizes.';
  if (meets === 'joint' && !side) return 'Ask what the joint’s end is, with its sizes.';
  if (meets === 'shaft' && !other) return 'Ask what the other shaft’s end is, with its sizes.';
  return '';
}

/** How deep an end can sit in a joint's end, where both were measured. At least one diameter: common practice. */
function depthLines(end: ShaftEnd, side: JointSide, style: LengthStyle): AnswerLine[] {
  if (side.depth === undefined)
    return [
      { words: 'How deep the bore is was not measured, so nothing is said of how far the end goes in.' },
    ];
  const deep = end.length === undefined ? side.depth : Math.min(side.depth, end.length);
  const bore = 'bore' in side ? side.bore : side.diameter;
  const size = (mm: number) => sizeWords(mm, style);
  const said = end.length === undefined ? 'The bore takes' : 'It goes in';
  return deep < bore
    ? [
        {
          words: `${said} only ${size(deep)}: at least its own diameter, ${size(bore)}, is wanted (${PRACTICE}).`,
          tone: 'look',
        },
      ]
    : [{ words: `${said} ${size(deep)}, and at least its own diameter is wanted (${PRACTICE}).` }];
}

/** An end against a joint's end. */
function withJoint(end: ShaftEnd, side: JointSide, style: LengthStyle): Omit<Answer, 'cautions' | 'assumed'> {
  const { status, reason } = judgeEnds(end, side, style);
  const [own, mate] = [endWords(end, style), sideWords(side, style)];
  const first: AnswerLine = { words: `${capitalised(own)}, into ${mate}.` };
  if (status === 'fits')
    return {
      tone: 'good',
      headline: `They go together: ${own} into ${mate}.`,
      parts: [{ title: 'Whether they fit', lines: [first, ...depthLines(end, side, style)] }],
    };
  if (status === 'trial-fit')
    return {
      tone: 'attention',
      headline: `Trial-fit first: ${reason}.`,
      parts: [
        {
          title: 'Whether they fit',
          lines: [first, { words: capitalised(`${reason}.`), tone: 'look' }, ...depthLines(end, side, style)],
        },
      ],
    };
  const adapter = side.kind !== 'weld' && end.kind !== 'round';
  return {
    tone: 'stop',
    headline: `They do not go together: ${reason}.`,
    parts: [
      { title: 'Whether they fit', lines: [first, { words: capitalised(`${reason}.`), tone: 'stop' }] },
      {
        title: 'What would mend it',
        lines: [
          { words: `Take the joint with ${sideForEnd(end, style)}.` },
          { words: `Or take a shaft with ${endForSide(side, style)}.` },
          adapter
            ? { words: `Or put an adapter between: ${own} on one end, ${mate} on the other.` }
            : { words: 'No adapter helps here: a round end has nothing that one could take hold of.' },
        ],
      },
    ],
  };
}

/** Two shafts' ends: what lies between them is a joint or a coupling that takes both. */
function withShaft(end: ShaftEnd, other: ShaftEnd, style: LengthStyle): Omit<Answer, 'cautions' | 'assumed'> {
  const open = [end, other].some((each) => each.kind === 'spline' && each.form === 'unidentified');
  const [one, two] = [sideForEnd(end, style), sideForEnd(other, style)];
  const both = one === two ? `${one} at both ends` : `${one} at one end and ${two} at the other`;
  const welded = [end, other].some(({ kind }) => kind === 'round');
  const { single, double } = USUAL_JOINT_DEGREES;
  return {
    tone: open ? 'attention' : 'good',
    headline: `Take a joint with ${both}${open ? '; trial-fit the spline first' : ''}.`,
    parts: [
      {
        title: 'What goes between',
        lines: [
          {
            words: `${capitalised(endWords(end, style))} on one shaft, ${endWords(other, style)} on the other.`,
          },
          { words: `One joint with ${both}.` },
          {
            words: `A single joint where the two shafts bend up to about ${single}°, a double joint up to about ${double}° with a support bearing beside it (${PRACTICE}; the maker’s figure rules).`,
          },
          {
            words: 'Where they run straight on in one line: a coupling with the same two ends, and no joint.',
          },
          ...(open
            ? [
                {
                  words:
                    'The form of a spline is not known: identify it, or trial-fit the mate, before ordering.',
                  tone: 'look' as const,
                },
              ]
            : []),
          ...(welded
            ? [
                {
                  words:
                    'A round end is welded into its joint: for a qualified welder, where the local rule allows it at all.',
                  tone: 'look' as const,
                },
              ]
            : []),
        ],
      },
    ],
  };
}

/**
 * Whether two ends go together, or what joint, shaft or adapter it takes. Units: mm in, `style` out.
 * Outcomes: an answer that waits for what is not described, or the verdict of `judgeEnds` with what would mend it.
 * Checked:  tests/unit/counter/answers.test.ts.
 */
export function fitAnswer(question: FitQuestion, style: LengthStyle): Answer {
  const { end, side, other, meets } = question;
  const mate = meets === 'joint' ? side : other;
  const problem = partProblem(end) || partProblem(mate);
  if (problem) return { ...waiting(`This cannot be: ${problem}.`, END_CAUTIONS), tone: 'stop' };
  if (!end || !mate) return waiting(waitsFor(question), END_CAUTIONS);
  const judged =
    meets === 'joint' ? withJoint(end, mate as JointSide, style) : withShaft(end, mate as ShaftEnd, style);
  return { ...judged, assumed: [], cautions: END_CAUTIONS };
}

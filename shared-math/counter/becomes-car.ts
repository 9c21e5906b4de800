import { proposeArrangements } from '../arrange/index.ts';
import { jointLimits, type ShopLimits } from '../findings/index.ts';
import type { Point } from '../geometry/points.ts';
import { add, cross, dot, scaled, subtract, unit } from '../geometry/vectors.ts';
import {
  type LayoutDocument,
  type Origin,
  PLAIN_LAYOUT,
  readLayout,
  refusalLine,
  type ShaftDocument,
  type ShaftEnd,
  withDriverSide,
  withMovedPlanned,
} from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { firstShaft, INPUT } from '../shaft/index.ts';
import type { LengthStyle } from '../units/index.ts';
import { answerOf } from './answers.ts';
import { askedCar, leaning } from './arrangement-answer.ts';
import type { Question, QuestionOf } from './questions.ts';
import { shaftTaken } from './shaft-routes.ts';
import { type ShaftRun, shaftRun } from './shaft-run.ts';
import { splineEnd } from './spline-answer.ts';

/** A document without its notes: what a question makes of the plain car. */
type Made = Outcome<LayoutDocument, string>;

/** The box moved so that its input stands at that place, its sector shaft turned square to the input. */
function withBoxAt(document: LayoutDocument, run: ShaftRun): LayoutDocument {
  const { box } = document.steering;
  const from: Point = [box.sectorCentre[0] - INPUT.back, box.sectorCentre[1], box.sectorCentre[2] + INPUT.up];
  const move = subtract(run.box.end, from);
  const share = dot(box.sectorAxis, run.box.axis) / dot(run.box.axis, run.box.axis);
  const across = subtract(box.sectorAxis, scaled(run.box.axis, share));
  const square = Math.hypot(...across) > 1e-3 ? across : cross(run.box.axis, [0, 0, 1]);
  return {
    ...document,
    steering: {
      ...document.steering,
      box: {
        ...box,
        sectorCentre: add(box.sectorCentre, move),
        pitmanBall: add(box.pitmanBall, move),
        sectorAxis: unit(square),
      },
    },
  };
}

/** Measured in the car, the two ends are as taped; from one to the other, only their difference is known. Joints are planned. */
function shaftOrigins(shaft: ShaftDocument, by: QuestionOf<'shaft'>['by']): Record<string, Origin> {
  const joints = shaft.joints.map((_, i): [string, Origin] => [`shaft.joints.${i}.centre`, 'plan']);
  const ends: [string, Origin][] =
    by === 'places'
      ? [
          ['shaft.column.end', 'tape'],
          ['shaft.box.end', 'tape'],
        ]
      : [];
  return Object.fromEntries([...ends, ...joints]);
}

function fromShaft(question: QuestionOf<'shaft'>, style: LengthStyle, limits: ShopLimits): Made {
  const run = shaftRun(question, style);
  if (!run.ok) return failed(run.failure.words);
  const { shaft } = shaftTaken(question, run.value, jointLimits(limits));
  if (!shaft) return failed('no route was found, so there is no shaft to draw');
  const plain = withDriverSide(PLAIN_LAYOUT, run.value.driverSide);
  return succeeded({
    ...withBoxAt(plain, run.value),
    shaft,
    origins: shaftOrigins(shaft, question.by),
  });
}

/** The plain car with a first shaft, on whose column or box the end is that was described. */
function fromEnd(end: ShaftEnd | undefined, whose: 'column' | 'box' | undefined): Made {
  if (!end) return failed('nothing is described yet');
  const shaft = firstShaft(PLAIN_LAYOUT);
  const fitted = whose ? { ...shaft, [whose]: { ...shaft[whose], fit: end } } : shaft;
  return succeeded({ ...PLAIN_LAYOUT, shaft: fitted });
}

function fromArrangement(question: QuestionOf<'arrangement'>, style: LengthStyle, limits: ShopLimits): Made {
  if (question.frontAxleLoad === undefined) return failed('the load on the front axle is not known yet');
  const asked = askedCar(question, style);
  const arrangements = proposeArrangements(asked.document, asked.facts);
  const name = question.chosen ?? leaning(question, asked, arrangements, style, limits).name;
  const laid = arrangements.find((each) => each.name === name);
  return laid?.figures
    ? succeeded(withMovedPlanned(asked.document, laid.document))
    : failed('this arrangement does not steer on this car as laid');
}

function made(question: Question, style: LengthStyle, limits: ShopLimits): Made {
  switch (question.kind) {
    case 'shaft':
      return fromShaft(question, style, limits);
    case 'spline':
      return fromEnd(splineEnd(question, style), question.whose);
    case 'fit':
      return fromEnd(question.end, question.whose);
    case 'arrangement':
      return fromArrangement(question, style, limits);
  }
}

/** What the layout remembers of the call: what it came to, what nobody said, and the note. */
function notesOf(question: Question, note: string, style: LengthStyle, limits: ShopLimits): string {
  const { headline, assumed } = answerOf(question, style, limits);
  return [
    `From the counter: ${headline}`,
    ...(note.trim() === '' ? [] : [note.trim()]),
    ...(assumed.length === 0 ? [] : ['Nobody said, so assumed:', ...assumed.map(({ words }) => words)]),
    'All else is a plain car’s: a guess, to be measured.',
  ].join('\n');
}

/**
 * The layout that a question becomes: a plain car with all that was said set on it, its points marked as taped or planned where
 * they are, all others a guess. Units: mm, degrees. Outcomes: a document that the layout's checks passed, or one clause
 * why there is none.
 * Checked: tests/unit/counter/becomes-car.test.ts.
 */
export function carOf(
  question: Question,
  name: string,
  note: string,
  style: LengthStyle,
  limits: ShopLimits,
): Made {
  const document = made(question, style, limits);
  if (!document.ok) return document;
  const named = { ...document.value, name, notes: notesOf(question, note, style, limits) };
  const read = readLayout(named);
  return read.ok ? succeeded(named) : failed(refusalLine(read.failure));
}

import type { ShaftDocument } from '../layout/index.ts';
import {
  type JointLimits,
  ON_ITS_END,
  ROUTE_JOINTS,
  rankedRoutes,
  routeOf,
  type Suggestion,
  sideTaking,
  stockEnd,
  suggestRoute,
} from '../shaft/index.ts';
import type { QuestionOf } from './questions.ts';
import type { ShaftRun } from './shaft-run.ts';

type ShaftQuestion = QuestionOf<'shaft'>;

/**
 * The routes with one, two and three joints, the best first. A column and a box at the counter are as long as they are, so
 * that their joints stand on them; a lone joint may ask for an end that is made longer.
 */
export function routesFor(run: ShaftRun, limits: JointLimits): Suggestion[] {
  const task = { column: run.column, box: run.box };
  const held = { columnSlide: ON_ITS_END, boxSlide: ON_ITS_END };
  return rankedRoutes(
    ROUTE_JOINTS.map((joints) =>
      suggestRoute(task, joints, {
        limits,
        tubeRadius: run.stock.diameter / 2,
        ...(joints === 1 ? {} : held),
      }),
    ),
  );
}

/** The route that was asked for, or else the first of the list that there is. */
export function takenRoute(routes: readonly Suggestion[], { joints }: ShaftQuestion): Suggestion | undefined {
  return joints === undefined
    ? routes.find(({ outcome }) => outcome.ok)
    : routes.find((each) => each.joints === joints);
}

/** A route's shaft with its ends, stock and joints' ends, as far as they are known. */
export function withEnds(shaft: ShaftDocument, question: ShaftQuestion, run: ShaftRun): ShaftDocument {
  const { columnFit, boxFit } = question;
  const last = shaft.joints.length - 1;
  const inner = (toward: 'column' | 'box') => sideTaking(stockEnd(run.stock, toward), undefined);
  return {
    ...shaft,
    column: { ...shaft.column, ...(columnFit ? { fit: columnFit } : {}) },
    box: { ...shaft.box, ...(boxFit ? { fit: boxFit } : {}) },
    joints: shaft.joints.map((joint, i) => {
      const columnSide = i === 0 ? columnFit && sideTaking(columnFit, undefined) : inner('box');
      const boxSide = i === last ? boxFit && sideTaking(boxFit, undefined) : inner('column');
      return { ...joint, ...(columnSide ? { columnSide } : {}), ...(boxSide ? { boxSide } : {}) };
    }),
    shafts: shaft.shafts.map((piece) => ({ ...piece, stock: run.stock })),
  };
}

/** The shaft that a question leads to, with its route; undefined if there is none. */
export function shaftTaken(question: ShaftQuestion, run: ShaftRun, limits: JointLimits) {
  const routes = routesFor(run, limits);
  const taken = takenRoute(routes, question);
  if (!taken?.outcome.ok) return { routes, taken, shaft: undefined };
  const shaft = withEnds(taken.outcome.value.shaft, question, run);
  return { routes, taken, shaft, route: routeOf(shaft, limits), proposal: taken.outcome.value };
}

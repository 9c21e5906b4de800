import { adjust, type SurveyRow } from '../adjust/index.ts';
import type { View } from '../drawing/index.ts';
import type { LayoutDocument } from '../layout/index.ts';
import { allTraced, type Help, helpsIn, type Wanted } from './advice-helps.ts';
import { photosFurther } from './photo-adjustment.ts';
import { cameraStart } from './photo-camera.ts';

/**
 * What something would do to the doubt of the points: one standard deviation in all directions together, mm, the root of
 * the mean square over all points.
 */
export interface Advice {
  readonly help: Help;
  readonly now: number;
  /** No more than this is left. */
  readonly left: number;
}

export interface AdviceTask extends Wanted {
  readonly document: LayoutDocument;
  readonly survey: readonly SurveyRow[];
}

export interface Advised {
  /** With all points traced on the photos that there are, and nothing else done. */
  readonly now: number;
  /** The first thing to do, and what to do after it; what is of no use is left out. */
  readonly steps: readonly Advice[];
}

/** What is promised leaves room for a person who stands a little elsewhere and clicks on other edges. */
const PROMISE = 1.25;
/** Less help than this is none. */
const WORTH = 0.8;
/** Of helps that leave no more than so many times as much as the best, the one that is least trouble is advised. */
const NEARLY_AS_GOOD = 2;
/** How many things are advised, one after another. */
const STEPS = 2;

/** How much trouble it is: a tape at hand, a step aside, a walk around the car, a ladder. */
const TROUBLE: Record<View, number> = { side: 2, front: 2, top: 3 };
function troubleOf(help: Help): number {
  if (help.kind === 'view') return TROUBLE[help.view];
  return help.kind === 'beside' ? 1 : 0;
}

/** The doubt of each wanted point, mm; undefined if the adjustment does not come to an end. */
function doubtsOf(document: LayoutDocument, { survey, points }: AdviceTask): Map<string, number> | undefined {
  const found = adjust(document, survey, { further: photosFurther(survey), pointsOnly: true });
  if (!found.ok) return undefined;
  return new Map(points.map((id) => [id, Math.hypot(...(found.value.points.get(id)?.doubt ?? [0, 0, 0]))]));
}

/** Over all points: the root of the mean square. */
export function typicalDoubt(doubts: Iterable<number>): number {
  const all = [...doubts];
  return Math.sqrt(all.reduce((sum, doubt) => sum + doubt ** 2, 0) / Math.max(1, all.length));
}

interface Tried {
  readonly help: Help;
  readonly document: LayoutDocument;
  readonly doubts: Map<string, number>;
  readonly left: number;
}

/** Tries all that could be done to a document, one adjustment each step; the best of it that is least trouble. */
function* bestIn(
  document: LayoutDocument,
  task: AdviceTask,
  doubts: ReadonlyMap<string, number>,
): Generator<undefined, Tried | undefined> {
  const tried: Tried[] = [];
  for (const { help, document: after } of helpsIn(document, task, doubts)) {
    const left = doubtsOf(after, task);
    yield;
    if (left) tried.push({ help, document: after, doubts: left, left: typicalDoubt(left.values()) });
  }
  const worth = tried.filter(({ left }) => PROMISE * left <= WORTH * typicalDoubt(doubts.values()));
  const least = Math.min(...worth.map(({ left }) => left));
  return worth
    .filter(({ left }) => left <= NEARLY_AS_GOOD * least)
    .sort((a, b) => troubleOf(a.help) - troubleOf(b.help) || a.left - b.left)[0];
}

/**
 * What would help most, foretold: each thing that a person could do is done to the document as it would come out, its
 * photos clicked in all points, and what the adjustment then leaves in doubt is compared. The clicks themselves need not
 * be there for that: a covariance asks only where they would be. Of what helps about as much the least trouble is
 * advised, and then what helps most once that is done. A generator: one adjustment each step.
 * Frame:    vehicle. Units: mm. Shapes: `points` are ids of the document's hardpoints.
 * Outcomes: undefined if no photo's camera is known or the adjustment fails; no steps if nothing takes a fifth off the
 *           doubt.
 * Source:   designing a survey by its covariance: C. Ghilani, Adjustment Computations, from memory.
 * Checked:  tests/thorough/trace/advice.test.ts (an independent camera takes the photo that was advised).
 */
export function* adviceOn(task: AdviceTask): Generator<undefined, Advised | undefined> {
  if (!task.document.photos.some((photo) => cameraStart(photo))) return undefined;
  let document = allTraced(task.document, task);
  let doubts = doubtsOf(document, task);
  if (!doubts) return undefined;
  yield;
  const now = typicalDoubt(doubts.values());
  const steps: Advice[] = [];
  while (steps.length < STEPS) {
    const best: Tried | undefined = yield* bestIn(document, task, doubts);
    if (!best) break;
    steps.push({ help: best.help, now: typicalDoubt(doubts.values()), left: PROMISE * best.left });
    ({ document, doubts } = best);
  }
  return { now, steps };
}

import { distance } from '../geometry/points.ts';
import { SAME_SPOT } from '../tolerances.ts';
import type { Refusal } from './refusals.ts';
import type { Layout } from './resolve.ts';
import type { JointSide, ShaftDocument, ShaftEnd, ShaftStock } from './shaft-schema.ts';

/** Flats that do not cut the circle are none. */
export function* flatProblems(
  path: string,
  part: ShaftEnd | JointSide | ShaftStock | undefined,
): Generator<Refusal> {
  if (!part || !('acrossFlats' in part)) return;
  const across = 'bore' in part ? part.bore : part.diameter;
  if (part.acrossFlats >= across)
    yield {
      path: `${path}.acrossFlats`,
      reason: `must be less than the ${'bore' in part ? 'bore' : 'diameter'}, ${across}; found ${part.acrossFlats}`,
    };
}

function* endProblems(shaft: ShaftDocument): Generator<Refusal> {
  for (const which of ['column', 'box'] as const) {
    if (Math.hypot(...shaft[which].axis) < 1e-6)
      yield { path: `shaft.${which}.axis`, reason: 'has no length, so it points nowhere' };
    yield* flatProblems(`shaft.${which}.fit`, shaft[which].fit);
  }
}

function* jointProblems({ joints }: ShaftDocument): Generator<Refusal> {
  for (const [i, joint] of joints.entries()) {
    // Each joint needs its own spot; those that are not neighbours too, since their bodies cannot share one.
    const other = joints.findIndex((entry) => distance(entry.centre, joint.centre) < SAME_SPOT);
    if (other < i)
      yield {
        path: `shaft.joints[${i}].centre`,
        reason: `on the same spot as joints[${other}]: ${other === i - 1 ? 'the shaft between them has no length' : 'two joints cannot share it'}`,
      };
    yield* flatProblems(`shaft.joints[${i}].columnSide`, joint.columnSide);
    yield* flatProblems(`shaft.joints[${i}].boxSide`, joint.boxSide);
  }
}

function* pieceProblems({ joints, shafts, supports }: ShaftDocument): Generator<Refusal> {
  if (shafts.length !== joints.length - 1)
    yield {
      path: 'shaft.shafts',
      reason: `expected ${joints.length - 1} for ${joints.length} ${joints.length === 1 ? 'joint' : 'joints'} (one between each joint and the next), found ${shafts.length}`,
    };
  for (const [i, { stock }] of shafts.entries()) yield* flatProblems(`shaft.shafts[${i}].stock`, stock);
  for (const [i, { shaft }] of supports.entries())
    if (shaft >= shafts.length)
      yield {
        path: `shaft.supports[${i}].shaft`,
        reason:
          shafts.length === 0
            ? 'there is no intermediate shaft to support'
            : `there is no shaft ${shaft}; they are counted from 0 to ${shafts.length - 1}`,
      };
}

/** What a well-formed steering shaft can still get wrong. */
export function* shaftProblems({ shaft }: Layout): Generator<Refusal> {
  if (!shaft) return;
  yield* endProblems(shaft);
  yield* jointProblems(shaft);
  yield* pieceProblems(shaft);
}

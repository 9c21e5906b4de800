import type { ShaftDocument } from '../../../layout/index.ts';
import { type JointLimits, type Route, routeOf } from '../../../shaft/index.ts';
import { toRadians } from '../../../units/index.ts';
import type { Analysis } from '../../analysis.ts';
import type { Speech } from '../../finding.ts';

/** What the rules on the shaft say where no standard does. */
export const PRACTICE = 'common practice, no published source';

/** A layout's shaft as it lies, its joints held to this shop's limits. */
export interface JudgedShaft {
  readonly shaft: ShaftDocument;
  readonly route: Route;
}

export function judgedShaft({ layout }: Analysis, speak: Speech): JudgedShaft | undefined {
  const { shaft } = layout;
  if (!shaft) return undefined;
  const limits: JointLimits = {
    single: toRadians(speak.limit('jointSingle').value),
    double: toRadians(speak.limit('jointDouble').value),
  };
  return { shaft, route: routeOf(shaft, limits) };
}

/** The hardpoint that stands for a joint. */
export const jointPart = (joint: number) => `shaft.joints.${joint}.centre`;

/** The hardpoint that stands for an intermediate shaft: that of the joint at its column end. */
export const piecePart = (index: number) => jointPart(index);

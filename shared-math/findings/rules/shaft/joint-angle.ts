import { toDegrees } from '../../../units/index.ts';
import type { Finding, Rule, Speech } from '../../finding.ts';
import { type JudgedShaft, jointPart, judgedShaft } from './judged.ts';

/** A limit as the finding tells it: the shop's for the kind, or the figure that the layout has for this very joint. */
function limitOf({ shaft, route }: JudgedShaft, joint: number, speak: Speech) {
  const own = shaft.joints[joint]?.limit;
  const kind = shaft.joints[joint]?.kind ?? 'single';
  const { source } = speak.limit(kind === 'single' ? 'jointSingle' : 'jointDouble');
  return {
    limit: `limit ${speak.figure(toDegrees(route.joints[joint]?.limit ?? 0))}°`,
    source: own === undefined ? source : 'this layout’s own figure for the joint',
  };
}

/** Each universal joint's true angle against its limit. */
export const shaftJointAngle: Rule = {
  name: 'shaft-joint-angle',
  measures: 'True angle of every universal joint of the steering shaft',
  judge(analysis, speak): Finding[] {
    const judged = judgedShaft(analysis, speak);
    if (!judged) return [];
    const { joints } = judged.route;
    const over = joints.flatMap(({ angle, limit }, joint) => (angle > limit ? [joint] : []));
    if (over.length === 0) {
      const shares = joints.map(({ angle, limit }) => angle / limit);
      const worst = shares.indexOf(Math.max(...shares));
      return [
        {
          rule: 'shaft-joint-angle',
          severity: 'info',
          part: jointPart(worst),
          sentence: `Joint ${worst + 1} stands at ${speak.angle(joints[worst]?.angle ?? 0, 1, [joints[worst]?.limit ?? 0])}, nearest to its limit of the shaft’s joints`,
          ...limitOf(judged, worst, speak),
          advice: '',
        },
      ];
    }
    const double = speak.limit('jointDouble').value;
    return over.map((joint): Finding => {
      const { kind, angle, limit } = joints[joint] as (typeof joints)[number];
      const single = kind === 'single' && judged.shaft.joints[joint]?.limit === undefined;
      const doubles = single && toDegrees(angle) <= double;
      return {
        rule: 'shaft-joint-angle',
        severity: 'stop',
        part: jointPart(joint),
        sentence: `Joint ${joint + 1} stands at ${speak.angle(angle, 1, [limit])}, too much for a ${kind} joint`,
        ...limitOf(judged, joint, speak),
        advice: doubles
          ? 'Use a double joint there, or move it so that its shafts run straighter.'
          : 'Move it so that its shafts run straighter, or share the angle with one joint more.',
        ...(doubles
          ? {
              remedy: {
                kind: 'set' as const,
                path: `shaft.joints.${joint}.kind`,
                value: 'double',
                words: 'Use a double joint',
              },
            }
          : {}),
      };
    });
  },
};

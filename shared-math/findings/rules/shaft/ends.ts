import type { Point } from '../../../geometry/points.ts';
import { add, scaled, unit } from '../../../geometry/vectors.ts';
import { checkMeetings, endsAt, type Meeting, slideOnAxis } from '../../../shaft/index.ts';
import type { Finding, Remedy, Rule } from '../../finding.ts';
import { type JudgedShaft, jointPart, judgedShaft, PRACTICE } from './judged.ts';

/** mm. A joint's bore holds its centre to the axis; so far off, something is bent or was measured wrongly. */
const OFF_AXIS = 0.5;

/** Whether the first and the last joint stand on the axes of what they sit on. */
export const shaftAxis: Rule = {
  name: 'shaft-axis',
  measures: 'How far the first and last joint lie off the column’s and the box’s axis',
  judge(analysis, speak): Finding[] {
    const judged = judgedShaft(analysis, speak);
    if (!judged) return [];
    const { shaft, route } = judged;
    const last = shaft.joints.length - 1;
    return (
      [
        ['column', 0, 'the column’s axis'],
        ['box', last, 'the axis of the box’s input'],
      ] as const
    ).flatMap(([part, joint, axisWords]): Finding[] => {
      const { off } = route[part];
      if (!(off > OFF_AXIS)) return [];
      // A lone joint stands on one axis at the most where the two do not meet.
      const slides = part === 'column' || last > 0;
      const centre = shaft.joints[joint]?.centre as Point;
      return [
        {
          rule: 'shaft-axis',
          severity: 'attention',
          part: jointPart(joint),
          sentence: `Joint ${joint + 1} lies ${speak.length(off, [OFF_AXIS])} off ${axisWords}`,
          limit: `limit ${speak.setLength(OFF_AXIS)}`,
          source: 'geometry: the joint sits on that shaft',
          advice: slides
            ? `Bring joint ${joint + 1} back onto the axis.`
            : 'One joint needs axes that meet: move the box or the column, or take two joints.',
          ...(slides
            ? {
                remedy: {
                  kind: 'move' as const,
                  id: jointPart(joint),
                  to: slideOnAxis(shaft[part].end, shaft[part].axis, centre),
                },
              }
            : {}),
        },
      ];
    });
  },
};

/** A joint slid along its axis until the end fills its bore. */
function slideHome({ shaft }: JudgedShaft, meeting: Meeting): Remedy | undefined {
  const { part, joint } = meeting;
  const { into } = endsAt(shaft, meeting);
  if (typeof part === 'number' || into?.depth === undefined || into.reach === undefined) return undefined;
  const along = into.reach - into.depth;
  const { end, axis } = shaft[part];
  const to = add(end, scaled(unit(axis), part === 'column' ? along : -along));
  return { kind: 'move', id: jointPart(joint), to };
}

/** Whether every end goes into the joint that takes it, and deep enough. */
export const shaftEnds: Rule = {
  name: 'shaft-ends',
  measures: 'Whether shaft ends and joint ends fit one another',
  judge(analysis, speak): Finding[] {
    const judged = judgedShaft(analysis, speak);
    if (!judged) return [];
    const meetings = checkMeetings(judged.shaft, judged.route, speak.style);
    const bad = meetings.filter(({ status }) => status === 'mismatch' || status === 'trial-fit');
    const untold = meetings.filter(({ status }) => status === 'untold').length;
    if (bad.length === 0)
      return [
        {
          rule: 'shaft-ends',
          severity: 'info',
          part: jointPart(0),
          sentence:
            untold === 0
              ? 'Every end of the steering shaft fits the joint that takes it'
              : `Of ${meetings.length} places where a shaft’s end meets a joint, ${untold} ${untold === 1 ? 'is' : 'are'} not described yet`,
          limit: '',
          source: PRACTICE,
          advice: '',
        },
      ];
    return bad.map((meeting): Finding => {
      const { status, name, reason, remedies, joint } = meeting;
      const slide = remedies.some(({ kind }) => kind === 'slide') ? slideHome(judged, meeting) : undefined;
      return {
        rule: 'shaft-ends',
        severity: status === 'mismatch' ? 'stop' : 'attention',
        part: jointPart(joint),
        sentence: `${name}: ${reason}`,
        limit: '',
        source: PRACTICE,
        advice:
          remedies.map(({ sentence }) => sentence).join(' Or: ') ||
          'Trial-fit the two before anything is ordered.',
        ...(slide ? { remedy: slide } : {}),
      };
    });
  },
};

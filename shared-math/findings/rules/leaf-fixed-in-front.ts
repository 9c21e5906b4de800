import type { Finding, Rule } from '../finding.ts';

/** A leaf fixed ahead swings the axle about a point ahead; a box behind swings the drag link about one behind. */
export const leafFixedInFront: Rule = {
  name: 'leaf-fixed-in-front',
  measures: 'Whether leaf and drag link swing about the same end of the car, in side steer',
  judge({ layout, arrangement }): Finding[] {
    if (arrangement !== 'side' || layout.location.kind !== 'parallel-leaf') return [];
    const { fixedEye, seat } = layout.location.left;
    const eyeAhead = fixedEye[0] > seat[0];
    const boxAhead = layout.steering.box.pitmanBall[0] > layout.steering.dragLinkBall[0];
    const against = eyeAhead !== boxAhead;
    return [
      {
        rule: 'leaf-fixed-in-front',
        severity: against ? 'attention' : 'info',
        part: 'location.left.fixedEye',
        sentence: against
          ? `The leaves are fixed ${eyeAhead ? 'in front' : 'behind'} and the box stands ${boxAhead ? 'in front' : 'behind'}: axle and drag link swing opposite ways`
          : 'Leaves and drag link swing about the same end of the car',
        limit: '',
        source: 'common practice, no published source',
        advice: against
          ? 'No height of the box evens that out. Put the shackle at the other end, the box at the fixed eye’s end, or use cross steer.'
          : '',
      },
    ];
  },
};

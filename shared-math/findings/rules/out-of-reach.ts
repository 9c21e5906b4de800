import type { Finding, Rule } from '../finding.ts';

/** Whether the linkage closes in every pose of travel and turn, and whether the axle is held at all. */
export const outOfReach: Rule = {
  name: 'out-of-reach',
  measures: 'Whether links reach, and hold the axle, in every pose',
  judge({ turn, extremes, heave, layout }): Finding[] {
    const base = { rule: 'out-of-reach', limit: '', source: 'geometry of the layout' };
    if (turn.status === 'no-pose')
      return [
        {
          ...base,
          severity: 'stop',
          part: layout.lateral.kind === 'bar' ? 'lateral.axle' : 'axle.left.wheelCentre',
          sentence: 'The links leave the axle free to move',
          advice:
            'Spread the links: no two on one line, no ball on the axle’s own line, the bar away from the wishbone’s ball.',
        },
      ];
    if (turn.status === 'out-of-reach')
      return [
        {
          ...base,
          severity: 'stop',
          part: 'steering.dragLinkBall',
          sentence: 'The linkage does not close at ride height',
          advice: 'Check the lengths of drag link and tie rod.',
        },
      ];
    const missed = extremes?.outOfReach ?? 0;
    const straight = heave.status.filter((status) => status !== 0).length;
    if (missed === 0 && straight === 0)
      return [
        {
          ...base,
          severity: 'info',
          part: 'steering.dragLinkBall',
          sentence: 'The linkage reaches everywhere in travel and turn',
          advice: '',
        },
      ];
    return [
      {
        ...base,
        severity: 'stop',
        part: 'steering.dragLinkBall',
        sentence: `A link does not reach in ${missed} of ${extremes?.poses ?? heave.count} poses of travel and turn`,
        advice: 'Set stops at the axle, or shorten the pitman arm.',
      },
    ];
  },
};

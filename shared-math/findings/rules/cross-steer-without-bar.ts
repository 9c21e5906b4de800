import type { Finding, Rule } from '../finding.ts';

/** A transverse spring on shackles lets the axle wander sideways under a cross drag link. */
export const crossSteerWithoutBar: Rule = {
  name: 'cross-steer-without-bar',
  measures: 'Whether a bar holds the axle sideways in cross steer',
  judge({ layout, arrangement }): Finding[] {
    if (arrangement !== 'cross' || layout.lateral.kind !== 'spring') return [];
    const { kind } = layout.location;
    const onLeaves = kind === 'parallel-leaf' || kind === 'quarter-elliptic';
    return [
      {
        rule: 'cross-steer-without-bar',
        severity: onLeaves ? 'info' : 'attention',
        part: 'steering.dragLinkBall',
        sentence: onLeaves
          ? 'The leaves alone hold the axle sideways against the drag link'
          : 'Nothing but the transverse spring holds the axle sideways against the drag link',
        limit: '',
        source: 'common practice, no published source',
        advice: 'Add a lateral bar of the drag link’s length, parallel to it.',
      },
    ];
  },
};

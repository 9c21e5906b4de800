import { gridExtremes } from '../../joints/index.ts';
import { type Layout, lateralPoints } from '../../layout/index.ts';
import { prepareFrontEnd } from '../../linkage/index.ts';
import { sweepTurn } from '../../sweep/index.ts';
import type { Analysis } from '../analysis.ts';
import { type Finding, locationPart, type Rule } from '../finding.ts';

const BASE = { rule: 'out-of-reach', severity: 'stop', limit: '', source: 'geometry of the layout' } as const;

/** How many poses of travel and turn a layout misses; infinite where it has none at ride height. */
function missedBy(layout: Layout): number {
  const frontEnd = prepareFrontEnd(layout);
  const turn = sweepTurn(frontEnd, 0, 0);
  if (turn.status !== 'ok' || turn.count < 2) return Number.POSITIVE_INFINITY;
  return gridExtremes(frontEnd, { right: turn.right.handwheel, left: turn.left.handwheel }).outOfReach;
}

/** The lateral bar or what is in its place, if with the axle held in the middle without it nothing is missed: then it is what cannot follow. */
function barAtFault({ layout, heave }: Analysis, poses: string): Finding | undefined {
  const { lateral } = layout;
  if (lateral.kind === 'spring' || missedBy({ ...layout, lateral: { kind: 'spring' } }) > 0) return undefined;
  if (lateral.kind === 'watt')
    return {
      ...BASE,
      part: 'lateral.pivot',
      sentence: `The Watt’s linkage does not let the axle through its travel: ${poses}`,
      advice:
        'Make its bars longer, or its rocker: at the end of their reach bar and rocker stand in one line.',
    };
  if (lateral.kind === 'fixed-spring')
    return {
      ...BASE,
      part: 'lateral.eye',
      sentence: `The fixed eye of the spring does not let the axle through its travel: ${poses}`,
      advice:
        'Make the half between clamp and fixed eye longer, or put that eye on a shackle with a lateral bar.',
    };
  const oneSide = lateral.axle[1] * lateral.frame[1] > 0;
  const straight = heave.status.some((status) => status !== 0);
  return {
    ...BASE,
    part: 'lateral.frame',
    sentence: `The lateral bar does not let the axle through its travel: ${poses}`,
    advice: oneSide
      ? 'Both its ends are on one side of the car: move its frame end to the other side, so that it is long and draws the axle sideways less.'
      : straight
        ? 'Make it longer, and level at ride height: a short or steep bar draws the axle sideways.'
        : 'Make it longer, or set stops at the axle.',
  };
}

/** Whether the linkage closes in every pose of travel and turn, and whether the axle is held at all; the link that fails. */
export const outOfReach: Rule = {
  name: 'out-of-reach',
  measures: 'Which link does not reach, or does not hold the axle, in any pose',
  judge(analysis): Finding[] {
    const { turn, extremes, heave, layout } = analysis;
    if (turn.status === 'no-pose')
      return [
        {
          ...BASE,
          part: lateralPoints(layout.lateral)[0]?.id ?? 'axle.left.wheelCentre',
          sentence: 'The links leave the axle free to move',
          advice:
            'Spread the links: no two on one line, no ball on the axle’s own line, the bar away from the wishbone’s ball.',
        },
      ];
    if (turn.status === 'out-of-reach')
      return [
        {
          ...BASE,
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
          ...BASE,
          severity: 'info',
          part: 'steering.dragLinkBall',
          sentence: 'The linkage reaches everywhere in travel and turn',
          advice: '',
        },
      ];
    const are = (count: number) => (count === 1 ? 'is' : 'are');
    const poses =
      missed > 0 && extremes
        ? `${missed} of ${extremes.poses} poses of travel and turn ${are(missed)} out of reach`
        : `${straight} of ${heave.count} poses of travel ${are(straight)} out of reach`;
    const bar = barAtFault(analysis, poses);
    if (bar) return [bar];
    const by = extremes?.missedBy;
    const most = by
      ? (['drag-link', 'tie-rod', 'axle'] as const).reduce((a, b) => (by[b] > by[a] ? b : a))
      : 'drag-link';
    // The other one where it fails too.
    const also = (other: 'drag-link' | 'tie-rod', name: string) =>
      by && by[other] > 0 ? `, ${by[other]} of them by ${name}` : '';
    return [
      {
        'drag-link': {
          ...BASE,
          part: 'steering.dragLinkBall',
          sentence: `The drag link does not reach: ${poses}${also('tie-rod', 'the tie rod')}`,
          advice:
            straight > 0
              ? 'Bring pitman ball and steering arm ball to where their arms stand square to the link: there it reaches furthest.'
              : 'Set stops at the axle, or shorten the pitman arm.',
        },
        'tie-rod': {
          ...BASE,
          part: 'axle.left.tieRodBall',
          sentence: `The tie rod does not reach: ${poses}${also('drag-link', 'the drag link')}`,
          advice:
            'Set stops at the axle, or bring the tie rod balls out so that the arms stand squarer to the rod.',
        },
        axle: {
          ...BASE,
          part: locationPart(layout),
          sentence: `What locates the axle leaves it no place: ${poses}`,
          advice: 'Make its rods or bars longer, or the travel less.',
        },
      }[most],
    ];
  },
};

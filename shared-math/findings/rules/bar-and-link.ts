import { distance } from '../../geometry/points.ts';
import { toRadians } from '../../units/index.ts';
import { ballMove } from '../ball-move.ts';
import type { Finding, Rule } from '../finding.ts';

/** rad. Nearer to parallel than a tenth of a degree nobody builds. */
const PARALLEL = toRadians(0.05);

/** mm. Lengths that no tape tells apart. */
const ALIKE = 0.1;

/** In cross steer the lateral bar swings the axle as the drag link swings its ball: alike, nothing steers. */
export const barAndLink: Rule = {
  name: 'bar-and-link',
  measures: 'Lateral bar and drag link: parallel, of one length, frame ends on one side',
  judge({ layout, arrangement }, speak): Finding[] {
    if (arrangement !== 'cross' || layout.lateral.kind !== 'bar') return [];
    const { lateral, steering } = layout;
    const { pitmanBall } = steering.box;
    const bar = [lateral.frame[1] - lateral.axle[1], lateral.frame[2] - lateral.axle[2]] as const;
    const link = [
      pitmanBall[1] - steering.dragLinkBall[1],
      pitmanBall[2] - steering.dragLinkBall[2],
    ] as const;
    const findings: Finding[] = [];
    const sameSide = bar[0] * link[0] > 0;
    const slope = (v: readonly [number, number]) => Math.atan(v[1] / v[0]);
    const apart = Math.abs(slope(bar) - slope(link));
    const angle = speak.limit('barLinkAngle');
    const skew = apart > toRadians(angle.value);
    // The pitman ball's height that lays the link parallel to the bar.
    const level = steering.dragLinkBall[2] + (link[0] * bar[1]) / bar[0];
    const move = ballMove(layout, [pitmanBall[0], pitmanBall[1], level], speak.length);
    findings.push({
      rule: 'bar-and-link',
      severity: !sameSide || skew ? 'attention' : 'info',
      part: 'lateral.frame',
      sentence: sameSide
        ? apart < PARALLEL
          ? 'Lateral bar and drag link are parallel'
          : `Lateral bar and drag link are ${speak.angle(apart, 1, [toRadians(angle.value)])} from parallel`
        : 'Lateral bar and drag link have their frame ends on opposite sides',
      limit: `limit ${speak.figure(angle.value)}°`,
      source: angle.source,
      advice: !sameSide
        ? 'Put the frame end of the bar on the side of the steering box.'
        : skew
          ? `${move.words}: parallel`
          : '',
      ...(sameSide && skew
        ? {
            remedy: move.remedy,
          }
        : {}),
    });
    const [a, b] = [distance(lateral.axle, lateral.frame), distance(steering.dragLinkBall, pitmanBall)];
    const unlike = Math.abs(a - b) / Math.max(a, b);
    const length = speak.limit('barLinkLength');
    const over = unlike > length.value;
    findings.push({
      rule: 'bar-and-link',
      severity: over ? 'attention' : 'info',
      part: 'lateral.axle',
      sentence:
        Math.abs(a - b) < ALIKE
          ? `Lateral bar and drag link are the same length, ${speak.length(a)}`
          : `Lateral bar ${speak.length(a, [b])}, drag link ${speak.length(b, [a])}: ${speak.number(100 * unlike, 1, [100 * length.value])} per cent apart`,
      limit: `limit ${speak.figure(100 * length.value)} per cent apart`,
      source: length.source,
      advice: over
        ? `Make the ${a < b ? 'lateral bar longer' : 'drag link longer'}, as near to equal as space allows.`
        : '',
    });
    return findings;
  },
};

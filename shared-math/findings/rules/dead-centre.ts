import { toRadians } from '../../units/index.ts';
import type { Finding, Rule } from '../finding.ts';

/** How square the drag link stays to its arms: near a straight line it no longer turns them. */
export const deadCentre: Rule = {
  name: 'dead-centre',
  measures: 'Least angle between the drag link and its arms over travel and turn',
  judge({ extremes }, speak): Finding[] {
    if (!extremes) return [];
    const { pitmanTransmission: pitman, steeringArmTransmission: arm } = extremes;
    const atPitman = pitman.angle <= arm.angle;
    const worst = atPitman ? pitman : arm;
    const { value, source } = speak.limit('transmissionLeast');
    const near = worst.angle < toRadians(value);
    return [
      {
        rule: 'dead-centre',
        severity: near ? (worst.angle < toRadians(value) / 2 ? 'stop' : 'attention') : 'info',
        part: atPitman ? 'steering.box.pitmanBall' : 'steering.dragLinkBall',
        at: worst.at,
        sentence: `Drag link and ${atPitman ? 'pitman' : 'steering'} arm come to ${speak.angle(worst.angle, 0, [toRadians(value)])} of a straight line, at ${speak.angle(Math.abs(worst.at.handwheel), 0)} of handwheel`,
        limit: `at least ${speak.figure(value)}°`,
        source,
        advice: near
          ? `Fit a ${atPitman ? 'shorter pitman arm' : 'longer steering arm'}, or set stops for less lock, to keep clear of dead centre.`
          : '',
      },
    ];
  },
};

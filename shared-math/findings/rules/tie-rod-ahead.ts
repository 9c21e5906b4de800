import type { Finding, Rule } from '../finding.ts';

/** mm. What a brake drum or disc and the wheel's rim take up inboard of the tyre's middle; from memory. */
const BESIDE_THE_WHEEL = 60;

/** Ahead of the axle the arms must splay outboard for Ackermann, into the wheel. */
export const tieRodAhead: Rule = {
  name: 'tie-rod-ahead',
  measures: 'Room for tie rod arms that point ahead of the axle',
  judge({ layout }, speak): Finding[] {
    const { tieRodBall, wheelCentre, kingpinTop, kingpinBottom } = layout.axle.left;
    if (tieRodBall[0] <= wheelCentre[0]) return [];
    const kingpin = (kingpinTop[1] + kingpinBottom[1]) / 2;
    const room = wheelCentre[1] - BESIDE_THE_WHEEL - tieRodBall[1];
    const splayed = tieRodBall[1] > kingpin;
    const hits = splayed && room < 0;
    return [
      {
        rule: 'tie-rod-ahead',
        severity: hits ? 'stop' : 'attention',
        part: 'axle.left.tieRodBall',
        sentence: hits
          ? `The tie rod ball ahead of the axle reaches ${speak.length(-room)} into the wheel and brake`
          : splayed
            ? `The tie rod is ahead of the axle; ${speak.length(room)} is left to wheel and brake`
            : 'The tie rod is ahead of the axle with arms that do not splay: Ackermann will be reversed',
        limit: '',
        source: 'geometry; the room taken by wheel and brake from memory, measure yours',
        advice: 'Put the arms behind the axle: there they clear the wheel and give Ackermann.',
      },
    ];
  },
};

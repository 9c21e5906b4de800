import { turnsLockToLock } from '../../sweep/index.ts';
import { type Finding, type Rule, sourceOf } from '../finding.ts';

/** Overall ratio at the centre, and turns lock to lock. */
export const ratio: Rule = {
  name: 'ratio',
  measures: 'Overall ratio at the centre and turns of the handwheel lock to lock',
  judge({ turn }, speak): Finding[] {
    if (turn.status !== 'ok' || turn.count === 0) return [];
    const overall = Math.abs(turn.straightRatio);
    const [least, most] = [speak.limit('ratioLeast'), speak.limit('ratioMost')];
    const low = overall < least.value;
    const high = overall > most.value;
    const turns = turnsLockToLock(turn);
    const [few, many] = [speak.limit('turnsLeast'), speak.limit('turnsMost')];
    const tooFew = turns < few.value;
    const outOfTurns = tooFew || turns > many.value;
    return [
      {
        rule: 'ratio',
        severity: low || high ? 'attention' : 'info',
        part: 'steering.box.sectorCentre',
        sentence: `Overall ratio ${speak.number(overall, 1, [least.value, most.value])} to 1 at the centre`,
        limit: `usual ${speak.figure(least.value)} to ${speak.figure(most.value)}`,
        source: sourceOf(least, most),
        advice: low
          ? 'Fit a slower box, a shorter pitman arm or a longer steering arm.'
          : high
            ? 'Fit a quicker box, a longer pitman arm or a shorter steering arm.'
            : '',
      },
      {
        rule: 'ratio',
        severity: outOfTurns ? 'attention' : 'info',
        part: 'steering.box.sectorCentre',
        sentence: `The handwheel goes ${speak.number(turns, 1, [few.value, many.value])} turns lock to lock`,
        limit: `${speak.figure(few.value)} to ${speak.figure(many.value)}`,
        source: sourceOf(few, many),
        advice: outOfTurns
          ? tooFew
            ? 'Fit a slower box, a shorter pitman arm or a longer steering arm: more turns for the same lock.'
            : 'Fit a quicker box, or set stops at the axle that end the turn sooner.'
          : '',
      },
    ];
  },
};

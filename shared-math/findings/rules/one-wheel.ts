import { holdWheels } from '../../aim/index.ts';
import { prepareFrontEnd } from '../../linkage/index.ts';
import { worstOneWheel } from '../../sweep/index.ts';
import { toRadians } from '../../units/index.ts';
import { ballMove } from '../ball-move.ts';
import type { Finding, Rule } from '../finding.ts';
import { bestHeight } from '../height-search.ts';
import { steerWay } from '../steer-way.ts';
import { wheelWords } from '../wheel-words.ts';

/** Share of the figure that a move has to take off to be worth advising. */
const WORTH = 0.1;

/** The largest steer of the wheels with each of them anywhere in its own travel: one wheel over a bump, or leaning. */
export const oneWheelWorst: Rule = {
  name: 'one-wheel',
  measures: 'Largest steer of the wheels with one of them over a bump, the handwheel held',
  judge({ oneWheel, layout, travel }, speak): Finding[] {
    if (oneWheel.status !== 'ok') return [];
    const { value, source } = speak.limit('bumpSteerWorst');
    const { worst, heave, roll } = oneWheel;
    const limit = toRadians(value);
    const base = {
      rule: 'one-wheel',
      part: 'steering.box.pitmanBall',
      sentence: `Bump steer ${speak.angle(worst, 2, [limit])} ${steerWay(oneWheel.steer)} with ${wheelWords(layout, oneWheel, speak.length)}`,
      at: { heave, roll, handwheel: 0 },
      limit: `limit ${speak.figure(value)}°`,
      source,
    };
    if (worst <= limit) return [{ ...base, severity: 'info', advice: '' }];
    const severity = worst > 2 * limit ? 'stop' : 'attention';
    // Coarse is enough to find the height; the figure promised there is then found anew.
    const held = holdWheels(travel, 7, 3);
    const to = held.status === 'ok' ? bestHeight(held, layout.steering.box.pitmanBall).to : undefined;
    const { steering } = layout;
    const mended =
      to &&
      worstOneWheel(
        prepareFrontEnd({ ...layout, steering: { ...steering, box: { ...steering.box, pitmanBall: to } } }),
      );
    if (mended?.status !== 'ok' || mended.worst > (1 - WORTH) * worst)
      return [
        {
          ...base,
          severity,
          advice:
            'Use Tune to move the box up and along together: the height of the pitman ball alone does not bring it down.',
        },
      ];
    const move = ballMove(layout, to as NonNullable<typeof to>, speak.length);
    return [
      {
        ...base,
        severity,
        advice: `${move.words}: bump steer ${speak.angle(mended.worst, 2)}`,
        remedy: move.remedy,
      },
    ];
  },
};

import { aimAtPlane } from '../../aim/index.ts';
import { ballMove } from '../ball-move.ts';
import type { Finding, Rule } from '../finding.ts';

/** In side steer the frame end of the drag link belongs on the line from the steering-arm ball through the aim. */
export const aimHeight: Rule = {
  name: 'aim-height',
  measures: 'Height of the pitman ball off the zero-slope line, in side steer',
  judge({ aim, arrangement, layout }, speak): Finding[] {
    if (arrangement !== 'side' || !aim.ok) return [];
    const ball = layout.steering.dragLinkBall;
    const pitman = layout.steering.box.pitmanBall;
    const point = aimAtPlane(aim.value, 1, pitman[1]);
    if (!point || Math.abs(point[0] - ball[0]) < 1) return [];
    const wanted = ball[2] + ((pitman[0] - ball[0]) * (point[2] - ball[2])) / (point[0] - ball[0]);
    const off = pitman[2] - wanted;
    const { value, source } = speak.limit('aimHeight');
    const over = Math.abs(off) > value;
    const move = ballMove(layout, [pitman[0], pitman[1], wanted], speak.length);
    return [
      {
        rule: 'aim-height',
        severity: over ? 'attention' : 'info',
        part: 'steering.box.pitmanBall',
        sentence: over
          ? `The pitman ball is ${speak.length(Math.abs(off))} ${off > 0 ? 'above' : 'below'} the zero-slope line`
          : 'The pitman ball is on the zero-slope line',
        limit: `limit ${speak.length(value)}`,
        source,
        advice: over ? `${move.words}: no bump steer slope` : '',
        ...(over ? { remedy: move.remedy } : {}),
      },
    ];
  },
};

import { zeroSlopeHeight, zeroSlopeLine } from '../../aim/index.ts';
import { ballMove } from '../ball-move.ts';
import type { Finding, Rule } from '../finding.ts';

/** mm. As near to the line as that line is found. */
const ON = 0.5;

/** In side steer the frame end of the drag link belongs on the zero-slope line, in the plane that the ball stands in. */
export const aimHeight: Rule = {
  name: 'aim-height',
  measures: 'Height of the pitman ball off the zero-slope line, in side steer',
  judge({ arrangement, layout, frontEnd }, speak): Finding[] {
    const line = arrangement === 'side' ? zeroSlopeLine(frontEnd) : undefined;
    if (!line) return [];
    const pitman = layout.steering.box.pitmanBall;
    const wanted = zeroSlopeHeight(line, pitman[0]);
    const off = pitman[2] - wanted;
    const { value, source } = speak.limit('aimHeight');
    const over = Math.abs(off) > value;
    const move = ballMove(layout, [pitman[0], pitman[1], wanted], speak.length);
    return [
      {
        rule: 'aim-height',
        severity: over ? 'attention' : 'info',
        part: 'steering.box.pitmanBall',
        sentence:
          Math.abs(off) < ON
            ? 'The pitman ball is on the zero-slope line in its own plane'
            : `The pitman ball is ${speak.length(Math.abs(off), [value])} ${off > 0 ? 'above' : 'below'} the zero-slope line in its own plane`,
        limit: `limit ${speak.setLength(value)}`,
        source,
        advice: over ? `${move.words}: no bump steer slope` : '',
        ...(over ? { remedy: move.remedy } : {}),
      },
    ];
  },
};

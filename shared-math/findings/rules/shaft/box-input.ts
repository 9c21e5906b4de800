import { drawnInputAngle, ownInputAngle, USUAL_INPUT_ANGLE, withInputTrue } from '../../../layout/index.ts';
import type { Finding, Rule } from '../../finding.ts';

/** Whether the drawn input stands to the sector shaft as it does in the box: no shop bends a box. */
export const boxInput: Rule = {
  name: 'shaft-box-input',
  measures: 'Angle between the box’s input and its sector shaft',
  judge({ layout }, speak): Finding[] {
    const drawn = drawnInputAngle(layout);
    if (drawn === undefined) return [];
    const own = ownInputAngle(layout);
    const { value, source } = speak.limit('boxInput');
    const off = Math.abs(drawn - own);
    const made =
      own === USUAL_INPUT_ANGLE ? 'a worm lies square to it' : `this box has ${speak.figure(own)}°`;
    const bad = off > value;
    const shown = speak.number(drawn, 1, [own, own - value, own + value]);
    const shaft = bad ? withInputTrue(layout)?.shaft : undefined;
    return [
      {
        rule: 'shaft-box-input',
        severity: bad ? 'attention' : 'info',
        part: 'shaft.box.end',
        sentence: bad
          ? `The box’s input is drawn at ${shown}° to its sector shaft: ${made}`
          : `The box’s input stands at ${shown}° to its sector shaft`,
        limit: `${speak.figure(own)}°, limit ${speak.figure(value)}° off`,
        source:
          own === USUAL_INPUT_ANGLE && layout.steering.box.inputAngle === undefined
            ? `${source}; square is assumed, the box’s own angle rules`
            : source,
        advice: bad
          ? 'Turn the input as drawn, or the box, until they agree; or type the angle that this box really has.'
          : '',
        ...(shaft
          ? {
              remedy: {
                kind: 'set' as const,
                path: 'shaft',
                value: shaft,
                words: 'Turn the input to the box’s own angle',
              },
            }
          : {}),
      },
    ];
  },
};

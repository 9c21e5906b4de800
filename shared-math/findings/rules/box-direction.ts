import type { Finding, Rule } from '../finding.ts';

/** A box mounted the wrong way round for its arm steers the car right when the driver turns left. */
export const boxDirection: Rule = {
  name: 'box-direction',
  measures: 'Whether left on the handwheel steers left',
  judge({ turn, layout }): Finding[] {
    if (turn.status !== 'ok' || turn.count === 0) return [];
    const right = turn.straightRatio > 0;
    const [x, y, z] = layout.steering.box.sectorAxis;
    return [
      {
        rule: 'box-direction',
        severity: right ? 'info' : 'stop',
        part: 'steering.box.sectorCentre',
        sentence: right ? 'Left on the handwheel steers left' : 'Left on the handwheel steers right',
        limit: '',
        source: 'ISO 8855: steering-wheel angle is positive for a left turn',
        advice: right ? '' : 'Use a box that turns the other way, or one made for this mounting.',
        ...(right
          ? {}
          : {
              remedy: {
                kind: 'set' as const,
                path: 'steering.box.sectorAxis',
                value: [-x + 0, -y + 0, -z + 0],
                words: 'Use a box that turns the other way',
              },
            }),
      },
    ];
  },
};

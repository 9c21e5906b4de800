import { steeringSide } from '../../layout/index.ts';
import type { Finding, Rule } from '../finding.ts';

/** Whether the steering is drawn on the side where the driver is said to sit. */
export const driverSide: Rule = {
  name: 'driver-side',
  measures: 'Whether box and column stand on the driver’s side',
  judge({ layout }): Finding[] {
    const side = layout.car.driverSide;
    if (side === undefined) return [];
    const drawn = steeringSide(layout);
    const wrong = drawn !== side;
    const what = layout.shaft ? 'column' : 'steering box';
    return [
      {
        rule: 'driver-side',
        severity: wrong ? 'attention' : 'info',
        part: layout.shaft ? 'shaft.column.end' : 'steering.box.sectorCentre',
        sentence: wrong
          ? `The driver sits on the ${side}; the ${what} is drawn on the ${drawn}`
          : `The ${what} is on the ${side}, where the driver sits`,
        limit: '',
        source: 'what the layout says of the car',
        advice: wrong ? `Move the steering to the ${side}, or say that the driver sits on the ${drawn}.` : '',
        ...(wrong
          ? {
              remedy: {
                kind: 'set' as const,
                path: 'car.driverSide',
                value: drawn,
                words: `Say that the driver sits on the ${drawn}`,
              },
            }
          : {}),
      },
    ];
  },
};

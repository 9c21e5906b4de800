import { forecastStations, gaugeStations } from '../../../../shared-math/adjust/gauge/index.ts';
import { formatDecimal, type Radians, toDegrees } from '../../../../shared-math/units/index.ts';
import { type Block, heading, paragraph } from '../../flow/block.ts';
import { Flow } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { table } from '../../flow/table.ts';
import { BODY, BODY_SOFT } from '../../pens/styles.ts';
import { angle, lockWheels, steers } from '../figures.ts';
import type { SheetModel } from '../sheet-model.ts';
import { heaveWords } from './curves-page.ts';

// Stations for a bump-steer gauge on the finished car and a table for turning plates: what should be read, and room for what is.

/** A line tall enough to write on. */
const WRITING = { ...BODY, size: 11.5 };
const BLANK = [['\u00a0', WRITING]] as const;

/** "0.12° toe-in", "0.30° toe-out"; what rounds to nothing has no way. */
function toeWords(gained: Radians | null): string {
  if (gained === null) return 'not reached';
  const size = formatDecimal(Math.abs(toDegrees(gained)), 2);
  if (Number(size) === 0) return `${size}°`;
  return `${size}° ${gained > 0 ? 'toe-in' : 'toe-out'}`;
}

function stationBlocks(model: SheetModel): Block[] {
  const { layout, style } = model;
  const forecast = forecastStations(layout, gaugeStations(layout.travel, style.unit)).reverse();
  return [
    paragraph(
      'Springs out, the handwheel held straight, the axle raised and lowered level. The gauge is set to zero at ride height; at each station write what it has gained: toe-in or toe-out.',
    ),
    table(
      [
        { head: 'Station', width: 1.5 },
        { head: 'Left wheel, as drawn', width: 1.2, align: 'right' },
        { head: 'read', width: 1, align: 'right' },
        { head: 'Right wheel, as drawn', width: 1.2, align: 'right' },
        { head: 'read', width: 1, align: 'right' },
      ],
      forecast.map((station) => [
        heaveWords(model, station.heave),
        toeWords(station.left),
        BLANK,
        toeWords(station.right),
        '',
      ]),
    ),
    paragraph(
      'With two dials against a plate: front less rear, divided by their spacing, is the angle; 1 in 100 is 0.57°. A tape from tyre to tyre shows nothing of this: both wheels steer the same way.',
      BODY_SOFT,
    ),
  ];
}

function plateBlocks({ layout, analysis }: SheetModel): Block[] {
  const { turn } = analysis;
  if (!steers(turn))
    return [heading('Turning plates'), paragraph('Not known: the linkage as drawn does not steer.')];
  const rows = (['left', 'right'] as const).map((side) => {
    const { inner, outer } = lockWheels(layout, turn[side]);
    return [`At ${side} lock`, angle(inner), BLANK, angle(outer), ''] as const;
  });
  return [
    heading('Turning plates'),
    paragraph('Plates set to zero straight ahead; turned to each lock, both wheels read.'),
    table(
      [
        { head: '', width: 1.1 },
        { head: 'Inner, as drawn', width: 1, align: 'right' },
        { head: 'read', width: 0.9, align: 'right' },
        { head: 'Outer, as drawn', width: 1, align: 'right' },
        { head: 'read', width: 0.9, align: 'right' },
      ],
      rows,
    ),
    heading('What the readings are for'),
    paragraph(
      'Typed into the board under Measure, Finished car, they lie over the computed curve: it says whether car and drawing agree within what gauge and tape leave in doubt, and if not, which point would explain it and what to measure.',
    ),
  ];
}

/** The finished car read with a gauge: the stations with what should be read and blanks. */
export function gaugePage(pageFrame: PageFrame, model: SheetModel): void {
  const flow = new Flow(
    pageFrame,
    { title: 'Read with a gauge', lying: true },
    2,
    'On the finished car, before it is driven',
  );
  flow.put(...stationBlocks(model));
  flow.nextColumn();
  flow.put(...plateBlocks(model));
}

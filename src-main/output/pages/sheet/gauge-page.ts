import { forecastStations, gaugeStations } from '../../../../shared-math/adjust/gauge/index.ts';
import { formatDecimal, MM_PER_INCH, type Radians, toDegrees } from '../../../../shared-math/units/index.ts';
import { type Block, heading, paragraph } from '../../flow/block.ts';
import { Flow } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { table } from '../../flow/table.ts';
import { BODY, BODY_SOFT, SMALL } from '../../pens/styles.ts';
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

/** How far two dials set this far apart on a plate come to differ, in the customer's unit: what a gauge itself reads. */
const DIALS = { in: 10 * MM_PER_INCH, mm: 250 } as const;

/** "0.012 in", "0.31 mm"; a caliper's figure. */
function dialWords({ style }: SheetModel, gained: Radians | null): string {
  if (gained === null) return '';
  const mm = Math.abs(Math.tan(gained)) * DIALS[style.unit];
  return style.unit === 'in' ? `${formatDecimal(mm / MM_PER_INCH, 3)} in` : `${formatDecimal(mm, 2)} mm`;
}

function stationBlocks(model: SheetModel): Block[] {
  const { layout, style } = model;
  const apart = style.unit === 'in' ? '10 in' : '250 mm';
  const forecast = forecastStations(layout, gaugeStations(layout.travel, style.unit)).reverse();
  return [
    paragraph(
      'Springs out, the handwheel held straight, the axle raised and lowered level. The gauge is set to zero at ride height; at each station write what it has gained: toe-in or toe-out.',
    ),
    table(
      [
        { head: 'Station', width: 1.4 },
        { head: 'Left wheel, as drawn', width: 1.2, align: 'right' },
        { head: `dials ${apart} apart`, width: 1.1, align: 'right' },
        { head: 'read', width: 0.9, align: 'right' },
        { head: 'as built', width: 0.9, align: 'right' },
        { head: 'Right wheel, as drawn', width: 1.2, align: 'right' },
        { head: `dials ${apart} apart`, width: 1.1, align: 'right' },
        { head: 'read', width: 0.9, align: 'right' },
        { head: 'as built', width: 0.9, align: 'right' },
      ],
      forecast.map((station) => [
        heaveWords(model, station.heave),
        toeWords(station.left),
        dialWords(model, station.left),
        BLANK,
        '',
        toeWords(station.right),
        dialWords(model, station.right),
        '',
        '',
      ]),
    ),
    paragraph(
      `Dials: front less rear of two against a plate, ${apart} from one to the other; other spacings in proportion, 1 in 100 is 0.57°. “As built” is what is left after shimming. A tape from tyre to tyre shows nothing of this: both wheels steer the same way.`,
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
    paragraph(
      'Typed into the board under Measure, Finished car, the readings lie over the computed curve: it says whether car and drawing agree within what gauge and tape leave in doubt, and if not, which point would explain it and what to measure.',
      SMALL,
    ),
  ];
}

/** The finished car read with a gauge: the stations with what should be read and blanks. */
export function gaugePage(pageFrame: PageFrame, model: SheetModel): void {
  const flow = new Flow(
    pageFrame,
    { title: 'Read with a gauge', lying: true },
    1,
    'On the finished car, before it is driven',
  );
  flow.put(...stationBlocks(model), ...plateBlocks(model));
}

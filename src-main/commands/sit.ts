import { refusalLine, resolveLayout } from '../../shared-math/layout/index.ts';
import { rideParameters } from '../../shared-math/ride/index.ts';
import {
  type Lowered,
  SIT_PLAINLY,
  type SitRow,
  sat,
  sitFailureWords,
  sitRows,
} from '../../shared-math/sit/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { type Column, dataOf, headOf, lineOf } from '../output/tables/column.ts';
import { onlyFile, readRange, single, takeArguments } from './arguments.ts';
import { readLayoutFile, shown } from './layout-file.ts';
import { type Answer, type Command, InputError, UsageError } from './usage.ts';

const HEIGHTS_MOST = 500;
const mm = (value: number) => `${Number(value.toFixed(1))} mm`;

/** What a ride height that cannot be has too. */
const ASKED: readonly Column<SitRow>[] = [
  { name: 'front', unit: 'mm', of: ({ lowered }) => lowered.front },
  { name: 'rear', unit: 'mm', of: ({ lowered }) => lowered.rear },
  { name: 'status', unit: 'word', of: ({ failure }) => failure?.kind ?? 'ok' },
];

const COLUMNS: readonly Column<SitRow>[] = [
  ...ASKED,
  { name: 'worstBumpSteer', unit: 'deg', of: ({ worstBumpSteer }) => worstBumpSteer },
  // Degrees for each millimetre.
  { name: 'slope', unit: 'deg', of: ({ slope }) => slope },
  { name: 'caster', unit: 'deg', of: ({ caster }) => caster },
  { name: 'bump', unit: 'mm', of: ({ bump }) => bump },
  { name: 'droop', unit: 'mm', of: ({ droop }) => droop },
  { name: 'dragLinkBy', unit: 'mm', of: ({ dragLinkBy }) => dragLinkBy },
];

const columnsOf = ({ failure }: SitRow) => (failure ? ASKED : COLUMNS);

function line(row: SitRow): string {
  const columns = columnsOf(row);
  return `${lineOf(columns, row)}${','.repeat(COLUMNS.length - columns.length)}`;
}

function* answer(file: string, options: ReadonlyMap<string, string>, csv: boolean): Answer {
  const document = readLayoutFile(file);
  const rear = single(options, 'rear', 1000);
  const load = single(options, 'load', 200_000);
  if (options.has('load') && options.has('front')) throw new UsageError('give --front or --load, not both');
  const refuse = (reason: string) => new InputError(`${shown(file)}: ${reason}`);
  if (options.has('over')) {
    const fronts = readRange('over', options.get('over') as string);
    if (fronts.length > HEIGHTS_MOST) throw new UsageError(`--over: more than ${HEIGHTS_MOST} values`);
    const rows = [
      ...sitRows(
        document,
        Array.from(fronts, (front) => ({ front, rear })),
      ),
    ];
    if (csv) {
      yield `${headOf(COLUMNS)}\n`;
      for (const row of rows) yield `${line(row)}\n`;
      return;
    }
    yield `${JSON.stringify({ format: 'toeboard-sit', version: 1, layout: document.name, rows: rows.map((row) => dataOf(columnsOf(row), row)) }, null, 1)}\n`;
    return;
  }
  if (csv) throw new UsageError('--csv needs --over: there is one answer without it, and no rows');
  let front = single(options, 'front', 1000);
  if (options.has('load')) {
    const ride = rideParameters(resolveLayout(document));
    if (!ride.ok) throw refuse(refusalLine(ride.failure));
    front = load / (2 * ride.value.parameters.springRate);
  }
  const lowered: Lowered = { front, rear };
  const sits = sat(document, lowered);
  if (!sits.ok) throw refuse(sitFailureWords(sits.failure, mm));
  const { rake, heave, aside, casterGained, dragLinkBy, document: after } = sits.value;
  yield `${JSON.stringify(
    {
      format: 'toeboard-sit',
      version: 1,
      front,
      rear,
      rake: toDegrees(rake),
      axle: { heave, aside },
      casterGained: toDegrees(casterGained),
      dragLinkBy,
      plainly: SIT_PLAINLY,
      layout: after,
    },
    null,
    1,
  )}\n`;
}

export const sit: Command = {
  name: 'sit',
  usage:
    'sit LAYOUT.json [--front MM | --load NEWTONS] [--rear MM] | sit LAYOUT.json --over FROM:TO:STEP [--rear MM] [--csv]',
  about: [
    'How the car sits: the layout with its frame lower over the front and rear axle (below 0 higher), at its new ride height:',
    'points turned by the rake, wheels on the ground, the drag link set for a centred box (dragLinkBy mm longer). --load settles the',
    'front by the springs’ rate. --over prints bump steer, its slope (degrees for each mm), caster and travel left over heights.',
  ].join('\n      '),
  run(args) {
    const taken = takeArguments(args, { values: ['front', 'load', 'rear', 'over'], flags: ['csv'] });
    return answer(onlyFile(taken), taken.values, taken.flags.has('csv'));
  },
};

import type { ListRow, Taken } from '../../../shared-math/adjust/list/index.ts';
import { shownText } from '../../../shared-math/outside/index.ts';
import type { Reply } from '../../../src-main/api/contract.ts';
import type { Measuring } from '../../document/measuring.svelte.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { asTyped, readFigure } from './typed-figures.ts';

type Line = Reply<'survey.readCsv'>['lines'][number];

/** What became of a filled list. */
export interface TakenIn {
  readonly taken: number;
  /** A sentence for each line that was not taken, without its full stop. */
  readonly refused: readonly string[];
}

/** A line of a filled list as an entry of its row, or why not. */
function entryOf(line: Line, list: readonly ListRow[], shown: 'in' | 'mm'): [ListRow, Taken] | string {
  const row = list.find(({ id }) => id === line.row);
  if (!row) return `this car’s list has no row ${shownText(line.row)}`;
  const way = line.counted === '' ? row.ways[0] : row.ways.find(({ name }) => name === line.counted);
  if (!way) return `${row.name}: it is not counted ${shownText(line.counted)}`;
  if ((line.unit === 'degrees') !== (way.unit === 'angle') && line.unit !== '')
    return `${row.name}: is in ${way.unit === 'angle' ? 'degrees' : 'in or mm'}, not in ${line.unit}`;
  const unit = line.unit === 'in' || line.unit === 'mm' ? line.unit : shown;
  const figure = readFigure(line.figure, way.unit, unit);
  if (!figure.ok) return `${row.name}: ${figure.failure}`;
  return [row, { way: way.id, typed: asTyped(line.figure, way.unit, unit), figure: figure.value }];
}

/** Takes a filled list into the car's measurements, as one step of undo. Returns undefined if the host refused the file. */
export async function takeListFile(
  file: File,
  openLayout: OpenLayout,
  measuring: Measuring,
): Promise<TakenIn | undefined> {
  let text: string;
  try {
    text = await file.text();
  } catch {
    openLayout.tell(`${shownText(file.name)}: cannot be read.`);
    return undefined;
  }
  const reply = await openLayout.ask('Not imported', 'survey.readCsv', {
    text,
    fileName: file.name.slice(0, 300),
  });
  if (!reply) return undefined;
  const entries: [ListRow, Taken][] = [];
  const lines: number[] = [];
  const refused: string[] = [];
  for (const line of reply.lines) {
    const entry = entryOf(line, measuring.list, openLayout.settings.unit);
    if (typeof entry === 'string') refused.push(`Line ${line.line}, ${entry}`);
    else {
      entries.push(entry);
      lines.push(line.line);
    }
  }
  const not = measuring.enterAll(entries, `Import ${shownText(file.name)}`);
  for (const [at, reason] of not)
    refused.push(`Line ${lines[at]}, ${(entries[at] as [ListRow, Taken])[0].name}: ${reason}`);
  return { taken: entries.length - not.size, refused };
}

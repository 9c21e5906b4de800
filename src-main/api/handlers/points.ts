import { shownText } from '../../../shared-math/outside/index.ts';
import { readPointsCsv } from '../../files/index.ts';
import { StoreError } from '../../store/index.ts';
import type { Handlers } from './handlers.ts';

export function pointHandlers(): Pick<Handlers, 'points.readCsv'> {
  return {
    'points.readCsv': ({ text, fileName }) => {
      const table = readPointsCsv(text);
      if (!table.ok) throw new StoreError('refused-document', `${shownText(fileName)}: ${table.failure}`);
      const { unit, lines } = table.value;
      return {
        unit: unit ?? '',
        lines: lines.map(({ line, point, at }) => ({
          line,
          point,
          at: [at[0], at[1], at[2]] as [string, string, string],
        })),
      };
    },
  };
}

import { shownText } from '../../../shared-math/outside/index.ts';
import { readShelfCsv, SHELF_PARTS_MAX, shelfCsv } from '../../files/index.ts';
import { StoreError } from '../../store/index.ts';
import { done, type Handlers, type Program } from './handlers.ts';

type ShelfCalls =
  | 'shelf.list'
  | 'shelf.add'
  | 'shelf.change'
  | 'shelf.remove'
  | 'shelf.restore'
  | 'shelf.importCsv'
  | 'shelf.exportCsv';

export function shelfHandlers({ store }: Program): Pick<Handlers, ShelfCalls> {
  const { shelf } = store;

  function room(more: number): void {
    if (shelf.list().length + more > SHELF_PARTS_MAX)
      throw new StoreError('refused-document', `the shelf holds at most ${SHELF_PARTS_MAX} entries`);
  }

  return {
    'shelf.list': () => ({ entries: shelf.list() }),
    'shelf.add': ({ part }) => {
      room(1);
      return { id: shelf.add([part])[0] as string };
    },
    'shelf.change': ({ id, part }) => done(() => shelf.change(id, part)),
    'shelf.remove': ({ ids }) => done(() => shelf.remove(ids)),
    'shelf.restore': ({ ids }) => done(() => shelf.restore(ids)),
    'shelf.importCsv': ({ text, fileName, replace }) => {
      const parts = readShelfCsv(text);
      if (!parts.ok) throw new StoreError('refused-document', `${shownText(fileName)}: ${parts.failure}`);
      return store.together(() => {
        const removed = replace ? shelf.list().map(({ id }) => id) : [];
        shelf.remove(removed);
        room(parts.value.length);
        return { added: shelf.add(parts.value), removed };
      });
    },
    'shelf.exportCsv': ({ unit }) => ({
      fileName: 'shelf.csv',
      text: shelfCsv(
        shelf.list().map(({ part }) => part),
        unit,
      ),
    }),
  };
}

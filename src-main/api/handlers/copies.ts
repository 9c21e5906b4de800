import type { Handlers, Program } from './handlers.ts';

export function copyHandlers({
  store,
}: Program): Pick<Handlers, 'copies.list' | 'copies.look' | 'copies.restore'> {
  const { copies } = store;
  return {
    'copies.list': () => {
      const list = copies.list();
      const bytes = list.reduce((sum, copy) => sum + copy.bytes, 0);
      return { copies: list, bytes, trouble: copies.trouble() };
    },
    'copies.look': ({ name }) => copies.look(name),
    'copies.restore': ({ name }) => copies.bringBack(name),
  };
}

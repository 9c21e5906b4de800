import { USUAL_INSTRUMENTS } from '../../../shared-math/adjust/list/index.ts';
import { readShopLimits } from '../../../shared-math/findings/index.ts';
import { contract, type Settings } from '../contract.ts';
import type { Handlers, Program } from './handlers.ts';

const UNSET: Settings = {
  unit: 'in',
  fraction: 16,
  snap: true,
  lastVariant: null,
  limits: {},
  tolerance: 3.175,
  instruments: USUAL_INSTRUMENTS,
  drawnBy: '',
  driverSide: null,
  asked: false,
  walk: { step: 0, shown: false },
  arcsDetail: true,
  folded: { sliders: false, curves: false },
  ground: 'as-computer',
};

export function programHandlers({
  version,
  store,
}: Program): Pick<Handlers, 'program.about' | 'settings.get' | 'settings.set'> {
  /** What is stored, as far as it still means something; the rest as if it had never been set. */
  function settings(): Settings {
    const stored = store.settings.read();
    const { shape } = contract['settings.get'].output;
    const known = Object.entries(shape).flatMap(([name, schema]) => {
      const value = schema.safeParse(stored[name]);
      return value.success ? [[name, value.data]] : [];
    });
    const limits = readShopLimits(stored['limits']);
    const found: Settings = { ...UNSET, ...Object.fromEntries(known), limits };
    const open = found.lastVariant !== null && store.variants.isShown(found.lastVariant);
    return open ? found : { ...found, lastVariant: null };
  }

  return {
    'program.about': () => ({ version, dataFolder: store.folder, notices: [...store.notices] }),
    'settings.get': settings,
    'settings.set': (changes) => {
      store.settings.write(changes);
      return settings();
    },
  };
}

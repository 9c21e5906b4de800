import { type Handed, Late } from '../controls/late.svelte.ts';
import type { Strip, StripMaker } from '../curves/strip.ts';

/** Curves that are loaded when the place is first opened: how their file is imported, and how they are made of it. */
export function lateStrip<Module>(
  load: () => Promise<Module>,
  make: (module: Module) => Strip,
): Handed<StripMaker> {
  return new Late(load, (module) => () => make(module));
}

import { createContext } from 'svelte';
import type { Workbench } from '../../document/workbench.svelte.ts';
import { Courier, type WorkerLine } from '../../jobs/courier.ts';
import { PointEffects } from '../../panels/points/point-effects.svelte.ts';
import { BoxMap } from './map/box-map.svelte.ts';
import { ToleranceView } from './tolerance/tolerance-view.svelte.ts';
import { Tuning } from './tune/tuning.svelte.ts';

/**
 * What is worked out beside the page: the map, the tuning, the effects of small steps, the tolerance band. The map has a
 * worker of its own, since it follows a drag; a search may take seconds and has another.
 */
export class Studies {
  readonly map: BoxMap;
  readonly tuning: Tuning;
  readonly effects: PointEffects;
  readonly tolerance: ToleranceView;

  constructor(bench: Workbench, startWorker: () => WorkerLine) {
    const quick = new Courier(startWorker);
    this.map = new BoxMap(bench, new Courier(startWorker));
    this.tuning = new Tuning(bench, new Courier(startWorker));
    this.effects = new PointEffects(bench, quick);
    this.tolerance = new ToleranceView(bench, quick);
  }
}

/** The one of the page, for its components. */
export const [getStudies, setStudies] = createContext<Studies>();

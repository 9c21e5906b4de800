import type { FrontEnd } from '../../shared-math/linkage/index.ts';
import { Courier, type WorkerLine } from '../workers/courier.ts';
import { BoxMap } from './box-map.svelte.ts';
import { PointEffects } from './point-effects.svelte.ts';
import { ToleranceView } from './tolerance-view.svelte.ts';
import { Tuning } from './tuning.svelte.ts';
import type { Workbench } from './workbench.svelte.ts';

/**
 * What is worked out beside the page: the map, the tuning, the effects of small steps, the tolerance band. The map has a
 * worker of its own, since it follows a drag; a search may take seconds and has another.
 */
export class Studies {
  readonly map: BoxMap;
  readonly tuning: Tuning;
  readonly effects: PointEffects;
  readonly tolerance: ToleranceView;
  /** A steering shaft that is looked at on the board before it is taken, with the layout around it. */
  tried: FrontEnd | undefined = $state.raw();

  constructor(bench: Workbench, startWorker: () => WorkerLine) {
    const quick = new Courier(startWorker);
    this.map = new BoxMap(bench, new Courier(startWorker));
    this.tuning = new Tuning(bench, new Courier(startWorker));
    this.effects = new PointEffects(bench, quick);
    this.tolerance = new ToleranceView(bench, quick);
  }
}

import { createContext } from 'svelte';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { JobClient, type WorkerLine } from '../../jobs/job-client.ts';
import { PointEffects } from '../../panels/points/point-effects.svelte.ts';
import { ForcesView } from './links/forces-view.svelte.ts';
import { BoxMap } from './map/box-map.svelte.ts';
import { RoomView } from './room/room-view.svelte.ts';
import { SitView } from './sit/sit-view.svelte.ts';
import { ToleranceView } from './tolerance/tolerance-view.svelte.ts';
import { Tuning } from './tune/tuning.svelte.ts';

/**
 * What is worked out beside the page: the map, the tuning, the effects of small steps, the tolerance band, link
 * forces, ride heights, the room that what moves needs. The map and that room have a
 * worker each, since they follow a drag; a search may take seconds and has another.
 */
export class Studies {
  readonly map: BoxMap;
  readonly tuning: Tuning;
  readonly effects: PointEffects;
  readonly tolerance: ToleranceView;
  readonly forces: ForcesView;
  readonly sit: SitView;
  readonly room: RoomView;

  constructor(openLayout: OpenLayout, startWorker: () => WorkerLine) {
    const quick = new JobClient(startWorker);
    this.map = new BoxMap(openLayout, new JobClient(startWorker));
    this.tuning = new Tuning(openLayout, new JobClient(startWorker));
    this.effects = new PointEffects(openLayout, quick);
    this.tolerance = new ToleranceView(openLayout, quick);
    this.forces = new ForcesView(openLayout, quick);
    this.sit = new SitView(openLayout, quick);
    this.room = new RoomView(openLayout, new JobClient(startWorker));
  }
}

/** The one of the page, for its components. */
export const [getStudies, setStudies] = createContext<Studies>();

import type { FaultLog } from '../api/dispatch.ts';
import { createHandlers, type Handlers } from '../api/handlers/index.ts';
import { type OutputRoutes, outputRoutes } from '../api/output-routes.ts';
import { type PhotoRoutes, photoRoutes } from '../api/photo-routes.ts';
import { type ShopRoutes, shopRoutes } from '../api/shop-routes.ts';
import { programVersion, projectsFolder } from '../files/index.ts';
import { OutputJobs } from '../output/jobs/index.ts';
import { openStore } from '../store/index.ts';
import { preparePrivate } from './private-folder.ts';

export interface OpenProgram {
  readonly handlers: Handlers;
  readonly photos: PhotoRoutes;
  readonly outputs: OutputRoutes;
  readonly shop: ShopRoutes;
  /** Where what leaves the board is made. */
  readonly jobs: OutputJobs;
  readonly close: () => void;
}

/** The program behind either host: its store open, its calls answered. Throws a StoreError of one line. */
export function openProgram(dataFolder: string, log: FaultLog = console.error): OpenProgram {
  preparePrivate(dataFolder);
  const store = openStore({ folder: dataFolder });
  const jobs = new OutputJobs({ log });
  const projects = projectsFolder();
  return {
    handlers: createHandlers({ version: programVersion(), store, outputs: jobs, projectsFolder: projects }),
    photos: photoRoutes(store),
    outputs: outputRoutes(jobs),
    shop: shopRoutes(store, log),
    jobs,
    close: () => {
      jobs.close();
      store.close();
    },
  };
}

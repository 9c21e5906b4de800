import { createHandlers, type Handlers } from '../api/handlers/index.ts';
import { type PhotoRoutes, photoRoutes } from '../api/photo-routes.ts';
import { programVersion, projectsFolder } from '../files/index.ts';
import { openStore } from '../store/index.ts';

export interface OpenProgram {
  readonly handlers: Handlers;
  readonly photos: PhotoRoutes;
  readonly close: () => void;
}

/** The program behind either host: its store open, its calls answered. Throws a StoreError of one line. */
export function openProgram(dataFolder: string): OpenProgram {
  const store = openStore({ folder: dataFolder });
  return {
    handlers: createHandlers({ version: programVersion(), store, projectsFolder: projectsFolder() }),
    photos: photoRoutes(store),
    close: store.close,
  };
}

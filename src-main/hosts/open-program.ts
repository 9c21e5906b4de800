import { createHandlers, type Handlers } from '../api/handlers/index.ts';
import { programVersion, projectsFolder as shippedProjects } from '../files/index.ts';
import { openStore } from '../store/index.ts';

export interface ProgramOptions {
  readonly dataFolder: string;
  /** Where the demonstrations are; those that ship with the program unless told. */
  readonly projectsFolder?: string;
}

export interface OpenProgram {
  readonly handlers: Handlers;
  readonly close: () => void;
}

/** The program behind either host: its store open, its calls answered. Throws a StoreError of one line. */
export function openProgram({ dataFolder, projectsFolder = shippedProjects() }: ProgramOptions): OpenProgram {
  const store = openStore({ folder: dataFolder });
  return {
    handlers: createHandlers({ version: programVersion(), store, projectsFolder }),
    close: store.close,
  };
}

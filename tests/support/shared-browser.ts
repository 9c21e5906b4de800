import type { TestProject } from 'vitest/node';
import { serveBrowser } from './browser-launch.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the run's one browser is reached. */
    browserEndpoint: string;
  }
}

/** One browser for all files of a run; each test has a context of its own in it, which shares nothing with the others. */
export default async function shareBrowser(project: TestProject): Promise<() => Promise<void>> {
  const server = await serveBrowser();
  project.provide('browserEndpoint', server.wsEndpoint());
  return () => server.close();
}

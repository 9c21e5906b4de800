import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Download } from 'playwright-core';
import { testFolder } from './host-folder.ts';

/** The file that a download brought: gone after the test. A browser that is shared keeps its own copy to itself. */
export async function downloaded(download: Download): Promise<{ path: string; content: Buffer }> {
  const path = join(testFolder(), download.suggestedFilename());
  await download.saveAs(path);
  return { path, content: readFileSync(path) };
}

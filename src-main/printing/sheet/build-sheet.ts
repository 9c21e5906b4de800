import type { Pages } from '../index.ts';
import type { PrintJob } from '../job.ts';
import { matterOf } from '../matter.ts';
import { arrangementPage } from './arrangement-page.ts';

/** The build sheet: drawings to scale, figures, links, shaft, findings, checks. */
export function buildSheet(job: PrintJob): Pages {
  const matter = matterOf(job);
  return [['general arrangement', (leaves) => arrangementPage(leaves, matter)]];
}

import type { Pages } from '../index.ts';
import type { PrintJob } from '../job.ts';
import { matterOf } from '../matter.ts';
import { arrangementPage } from './arrangement-page.ts';
import { cautionsPages, checksPages } from './checks-pages.ts';
import { curvesPage } from './curves-page.ts';
import { figuresPage } from './figures-page.ts';
import { findingsPages } from './findings-pages.ts';
import { frontPage, sidePage, topPage } from './measured-pages.ts';
import { shaftPages } from './shaft-pages.ts';

/** The build sheet: drawings to scale, figures, links, shaft, findings, checks. */
export function buildSheet(job: PrintJob): Pages {
  const matter = matterOf(job);
  return [
    ['general arrangement', (leaves) => arrangementPage(leaves, matter)],
    ['side view', (leaves) => sidePage(leaves, matter)],
    ['top view', (leaves) => topPage(leaves, matter)],
    ['front view', (leaves) => frontPage(leaves, matter)],
    ['links, box and alignment', (leaves) => figuresPage(leaves, matter)],
    ['steer and toe', (leaves) => curvesPage(leaves, matter)],
    ['steering shaft', (leaves) => shaftPages(leaves, matter)],
    ['findings', (leaves) => findingsPages(leaves, matter)],
    ['checks', (leaves) => checksPages(leaves, matter)],
    ['cautions', (leaves) => cautionsPages(leaves, matter)],
  ];
}

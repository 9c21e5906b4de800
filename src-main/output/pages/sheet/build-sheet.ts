import type { PrintJob } from '../job.ts';
import type { Pages } from '../pages.ts';
import { sheetModelOf } from '../sheet-model.ts';
import { arrangementPage } from './arrangement-page.ts';
import { cautionsPages, checksPages } from './checks-pages.ts';
import { curvesPage } from './curves-page.ts';
import { figuresPage } from './figures-page.ts';
import { findingsPages } from './findings-pages.ts';
import { gaugePage } from './gauge-page.ts';
import { frontPage, sidePage, topPage } from './measured-pages.ts';
import { shaftPages } from './shaft-pages.ts';

/** The build sheet: drawings to scale, figures, links, shaft, findings, checks. */
export function buildSheet(job: PrintJob): Pages {
  const model = sheetModelOf(job);
  return [
    ['general arrangement', (pageFrame) => arrangementPage(pageFrame, model)],
    ['side view', (pageFrame) => sidePage(pageFrame, model)],
    ['top view', (pageFrame) => topPage(pageFrame, model)],
    ['front view', (pageFrame) => frontPage(pageFrame, model)],
    ['links, box and alignment', (pageFrame) => figuresPage(pageFrame, model)],
    ['steer and toe', (pageFrame) => curvesPage(pageFrame, model)],
    ['steering shaft', (pageFrame) => shaftPages(pageFrame, model)],
    ['findings', (pageFrame) => findingsPages(pageFrame, model)],
    ['gauge stations', (pageFrame) => gaugePage(pageFrame, model)],
    ['checks', (pageFrame) => checksPages(pageFrame, model)],
    ['cautions', (pageFrame) => cautionsPages(pageFrame, model)],
  ];
}

import type { PageFrame } from '../../flow/page-frame.ts';
import type { PrintJob } from '../job.ts';
import type { Pages } from '../pages.ts';
import { type SheetModel, sheetModelOf } from '../sheet-model.ts';
import { arcsPage } from './arcs-page.ts';
import { arrangementPage } from './arrangement-page.ts';
import { cautionsPages, checksPages } from './checks-pages.ts';
import { curvesPage } from './curves-page.ts';
import { figuresPage, linksPage, partsPage } from './figures-page.ts';
import { findingsPages } from './findings-pages.ts';
import { forcesPage } from './forces-page.ts';
import { gaugePage } from './gauge-page.ts';
import { frontPage, sidePage, topPage } from './measured-pages.ts';
import { shaftPages } from './shaft-pages.ts';

/** One page of the sheet, or a few that belong together. */
export interface SheetPage {
  readonly what: string;
  readonly draw: (pageFrame: PageFrame, model: SheetModel) => void;
}

/** The build sheet in its order: drawings to scale, figures, links, shaft, findings, checks. A new page is one line here. */
export const SHEET_PAGES: readonly SheetPage[] = [
  { what: 'general arrangement', draw: arrangementPage },
  { what: 'side view', draw: sidePage },
  { what: 'top view', draw: topPage },
  { what: 'front view', draw: frontPage },
  { what: 'links and arms', draw: linksPage },
  { what: 'link forces', draw: forcesPage },
  { what: 'box, tolerances and alignment', draw: figuresPage },
  { what: 'parts', draw: partsPage },
  { what: 'detail of the arcs', draw: arcsPage },
  { what: 'steer and toe', draw: curvesPage },
  { what: 'steering shaft', draw: shaftPages },
  { what: 'findings', draw: findingsPages },
  { what: 'gauge stations', draw: gaugePage },
  { what: 'checks', draw: checksPages },
  { what: 'cautions', draw: cautionsPages },
];

export function buildSheet(job: PrintJob): Pages {
  const model = sheetModelOf(job);
  return SHEET_PAGES.map(({ what, draw }) => [what, (pageFrame) => draw(pageFrame, model)]);
}

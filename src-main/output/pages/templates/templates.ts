import { type Block, heading, item, paragraph } from '../../flow/block.ts';
import { stack } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { warningSign } from '../../flow/page-frame.ts';
import { table } from '../../flow/table.ts';
import type { Area } from '../../pens/papers.ts';
import { BODY } from '../../pens/styles.ts';
import type { PrintJob } from '../job.ts';
import type { Pages } from '../pages.ts';
import { type SheetModel, sheetModelOf } from '../sheet-model.ts';
import { armTemplates } from './arms.ts';
import { bracketTemplates } from './brackets.ts';
import { shaftStrips } from './shaft-strips.ts';
import type { Template } from './template.ts';
import { paintTemplate, planTiles, thumbnail } from './tiles.ts';

const BEFORE = [
  'Print at 100 per cent (“actual size”), never fitted to the page. Every page carries a rule of 100 mm and one of 4 in along its foot, and 100 mm up its edge: measure them first. One that is off makes the page worthless.',
  'Pages of one template are laid over one another at their marks, a cross in a circle, and taped.',
  'A template gives centres. Holes, shapes, tapers and splines are those of the part’s maker.',
];

/** The first page: what there is, on which pages, and what to do before the scissors. */
function contentsPage(pageFrame: PageFrame, templates: readonly Template[], shaft: boolean): void {
  const { pen } = pageFrame;
  const area = pageFrame.open(
    { title: 'Templates at full size', scale: '1 : 1', lying: false },
    'Read this first',
  );
  let page = 2;
  const rows = templates.map((template) => {
    const plan = planTiles(pageFrame, template);
    const count = plan.columns * plan.rows;
    const pageWords = count === 1 ? String(page) : `${page} to ${page + count - 1}`;
    page += count;
    return [
      template.title,
      template.note,
      count === 1 ? 'one page' : `${plan.columns} × ${plan.rows} pages`,
      pageWords,
    ];
  });
  const blocks: Block[] = [
    heading('Before the scissors'),
    ...BEFORE.map((line) => item((sign, x, y) => warningSign(sign, x, y + 0.4, 3), [[line, BODY]], 6, 2.4)),
    heading('What is here'),
    table(
      [
        { head: 'Template', width: 1.7 },
        { head: 'How it lies', width: 2.4 },
        { head: 'Takes', width: 0.9 },
        { head: 'Pages', width: 0.6, align: 'right' },
      ],
      rows,
    ),
    ...(shaft
      ? []
      : [
          paragraph(
            'No steering shaft end with a notch or a dimple is described in this layout: there are no strips for one.',
          ),
        ]),
  ];
  const y = stack(pen, area, blocks) + 3;
  pageMaps(pageFrame, templates, { ...area, y, height: area.y + area.height - y });
}

/** Every template made small, with the numbers of its pages. */
function pageMaps(pageFrame: PageFrame, templates: readonly Template[], area: Area): void {
  const across = templates.length > 8 ? 4 : 3;
  const down = Math.ceil(templates.length / across);
  const width = area.width / across;
  const height = Math.min(area.height / down, 62);
  let page = 2;
  templates.forEach((template, i) => {
    const box = {
      x: area.x + (i % across) * width + 3,
      y: area.y + Math.floor(i / across) * height,
      width: width - 6,
      height,
    };
    thumbnail(pageFrame, template, page, box);
    const plan = planTiles(pageFrame, template);
    page += plan.columns * plan.rows;
  });
}

/** What templates there are, by what they are of, each with those that a layout gives. A new one is one entry here. */
export const TEMPLATES: readonly ((model: SheetModel) => readonly Template[])[] = [
  armTemplates,
  bracketTemplates,
  shaftStrips,
];

/** The templates of a layout, one part each, after a page that tells what there is. */
export function templatePages(job: PrintJob): Pages {
  const model = sheetModelOf(job);
  const templates = TEMPLATES.flatMap((of) => of(model));
  return [
    ['contents', (pageFrame) => contentsPage(pageFrame, templates, shaftStrips(model).length > 0)],
    ...templates.map(
      (template) =>
        [template.title.toLowerCase(), (pageFrame: PageFrame) => paintTemplate(pageFrame, template)] as const,
    ),
  ];
}

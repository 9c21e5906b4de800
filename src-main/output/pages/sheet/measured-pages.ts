import { type Block, heading, paragraph } from '../../flow/block.ts';
import { Flow, heightOf, stack } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { table } from '../../flow/table.ts';
import type { Area } from '../../pens/papers.ts';
import { lineHeight, type PrintPen } from '../../pens/print-pen.ts';
import { scaleWords } from '../../pens/scales.ts';
import { BODY, BODY_BOLD, SMALL, SMALL_INK } from '../../pens/styles.ts';
import { originWord, originWords } from '../made-from.ts';
import { axleLine, bareName, onePerNumber, pointName, sided, usually } from '../points.ts';
import type { SheetModel } from '../sheet-model.ts';
import { measure, measuredHeight, measuredScale, measuredView } from './measured-views.ts';

/** The numbers and what they stand for, in columns. */
function legend(pen: PrintPen, model: SheetModel, area: Area, columns: number): void {
  const entries = onePerNumber(model);
  const rows = Math.ceil(entries.length / columns);
  const step = lineHeight(BODY.size) + 0.4;
  entries.forEach((point, i) => {
    const x = area.x + Math.floor(i / rows) * (area.width / columns);
    const y = area.y + ((i % rows) + 0.8) * step;
    pen.text(String(point.number), x + 5, y, BODY_BOLD, 'right');
    const name = pointName(point);
    pen.text(name, x + 7.5, y, BODY);
    pen.text(originWord(model, point), x + 8.7 + pen.widthOf(name, BODY), y, SMALL);
  });
}

const legendHeight = (model: SheetModel, columns: number) =>
  Math.ceil(onePerNumber(model).length / columns) * (lineHeight(BODY.size) + 0.4);

/** How the side view's figures are to be read. */
function howToMeasure({ datum, layout, length }: SheetModel): string {
  if (datum.top === undefined) return 'At ride height. No rails are drawn, so heights are above ground.';
  const box = datum.topAt(layout.steering.box.sectorCentre[0]);
  const drop = box === undefined ? 0 : datum.top - box;
  const dropWords = length(Math.abs(drop));
  const there =
    dropWords === length(0)
      ? ''
      : ` The rail’s top at the box lies ${dropWords} ${drop > 0 ? 'below' : 'above'} that line.`;
  return `At ride height. Frame top: a level line from the top of the rails at the axle.${there}`;
}

/** One view at the largest scale that the page takes, every point measured, and what the numbers stand for. */
function measuredPage(
  pageFrame: PageFrame,
  model: SheetModel,
  view: 'side' | 'front',
  title: string,
  note: string,
): void {
  const columns = 4;
  const room = pageFrame.room(true);
  const foot = legendHeight(model, columns) + 3;
  const scale = measuredScale(model, view, { ...room, height: room.height - foot - 9 }, true);
  const page = pageFrame.open({ title, scale: scaleWords(scale), lying: true, projection: true }, note);
  const most = page.height - foot;
  const drawn = measuredView(model, view, scale, page, true);
  const spare = Math.max(0, most - measuredHeight(drawn)) / 2;
  measure(pageFrame.pen, model, { ...drawn, y: drawn.y + spare });
  legend(pageFrame.pen, model, { ...page, y: page.y + page.height - foot + 3 }, columns);
}

export function sidePage(pageFrame: PageFrame, model: SheetModel): void {
  measuredPage(pageFrame, model, 'side', 'Side view', howToMeasure(model));
}

export function frontPage(pageFrame: PageFrame, model: SheetModel): void {
  measuredPage(pageFrame, model, 'front', 'Front view', howToMeasure(model));
}

/** The table of all points: their distances in the customer's unit, the other beneath. */
function pointTable(model: SheetModel) {
  const { datum, length, other } = model;
  const line = axleLine(model);
  /** The distance with its way where it has one, and below it the same in the other unit. */
  const cell = (mm: number, way = '') => {
    const size = length(Math.abs(mm));
    return [
      [way && size !== length(0) ? `${size} ${way}` : size, BODY],
      [other(Math.abs(mm)), SMALL_INK],
    ] as const;
  };
  const rows = onePerNumber(model).map((point) => {
    const [x, y, z] = point.at;
    const face = datum.faceAt(x, y);
    const top = datum.top;
    return [
      [[String(point.number), BODY_BOLD]] as const,
      [
        [bareName(point), BODY],
        [[point.twin ? 'both sides' : '', originWords(model, point)].filter(Boolean).join(', '), SMALL_INK],
      ] as const,
      cell(line - x, x > line ? 'ahead' : ''),
      cell(y, point.twin ? '' : y > 0 ? 'left' : 'right'),
      face === undefined ? '–' : cell(Math.abs(y) - face, Math.abs(y) < face ? 'inside' : ''),
      cell(z),
      top === undefined ? '–' : cell(top - z, z > top ? 'above' : ''),
    ];
  });
  return table(
    [
      { head: '', width: 0.7, align: 'right' },
      { head: 'Point', width: 2.9 },
      { head: 'Behind axle centre line', width: 2.05, align: 'right' },
      { head: 'From car’s centre line', width: 2.05, align: 'right' },
      { head: 'Outside rail’s outer face, there', width: 2.05, align: 'right' },
      { head: 'Above ground', width: 1.75, align: 'right' },
      { head: 'Below frame top', width: 1.8, align: 'right' },
    ],
    rows,
  );
}

/** What the table's distances are taken from. */
function howBlocks({ datum, layout }: SheetModel): Block[] {
  if (layout.rails.length === 0 || datum.top === undefined)
    return [
      paragraph(
        'No rails are drawn in this layout: distances are from the axle, the car’s centre line and the ground.',
      ),
    ];
  return [
    paragraph(
      'Axle centre line: through both wheel centres. Frame top: a level line from the top of the rails at the axle. Rail’s outer face: where the rail passes that point. Straight-edge across the rails, plumb line and level.',
      SMALL,
    ),
  ];
}

/** How the rails run: every point of every rail. */
function railBlocks(model: SheetModel): Block[] {
  const { layout, length } = model;
  if (layout.rails.length === 0) return [];
  const line = axleLine(model);
  return [
    heading('Rails'),
    table(
      [
        { head: 'Middle of the rail, front to back', width: 2.4 },
        { head: 'Behind axle centre line', width: 1.4, align: 'right' },
        { head: 'From car’s centre line', width: 1.4, align: 'right' },
        { head: 'Above ground', width: 1.1, align: 'right' },
      ],
      layout.rails.flatMap(({ name, path, height, width, mirrored }) =>
        path.map(([x, y, z], i) => [
          i === 0
            ? `${name || 'Rail'}, ${length(height)} by ${length(width)}${mirrored ? ', both sides' : ''}`
            : '',
          usually(length, line - x, 'ahead'),
          mirrored ? length(Math.abs(y)) : sided(length, y),
          length(z),
        ]),
      ),
    ),
  ];
}

/** The view from above, and where every point lies. */
export function topPage(pageFrame: PageFrame, model: SheetModel): void {
  const { pen } = pageFrame;
  const room = pageFrame.room(true);
  const wide = room.width * 0.43;
  const scale = measuredScale(model, 'top', { ...room, width: wide, height: room.height - 9 }, false);
  const page = pageFrame.open(
    {
      title: 'Top view, and where every point lies',
      scale: scaleWords(scale),
      lying: true,
      projection: true,
    },
    'At ride height, wheels straight ahead',
  );
  const view = measuredView(model, 'top', scale, { ...page, width: wide }, false);
  measure(pen, model, view);
  const x = page.x + wide + 6;
  const beside = { ...page, x, width: page.x + page.width - x };
  const rails = railBlocks(model);
  // Below the view where there is room, else after the table, on as many pages as that takes.
  const taken = measuredHeight(view) + 2;
  const below = { ...page, y: page.y + taken, width: wide, height: page.height - taken };
  const fits = heightOf(pen, wide, rails) <= below.height;
  if (fits) stack(pen, below, rails);
  const flow = new Flow(pageFrame, { title: 'Where every point lies', lying: true }, 1, '', {
    first: [beside],
  });
  flow.put(pointTable(model), ...howBlocks(model), ...(fits ? [] : rails));
}

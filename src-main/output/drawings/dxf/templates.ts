import type { ViewPoint } from '../../../../shared-math/drawing/index.ts';
import { CAUTION } from '../../../../shared-math/words/index.ts';
import { sheetModelOf } from '../../pages/sheet-model.ts';
import { PUNCH_RADIUS, type TemplateCut } from '../../pages/templates/cut.ts';
import type { Template } from '../../pages/templates/template.ts';
import { TEMPLATES } from '../../pages/templates/templates.ts';
import type { DrawingJob } from '../job.ts';
import { circle, type Spot } from '../strokes/stroke.ts';
import { DrawingFile } from './drawing-file.ts';
import type { LayerLook } from './layers.ts';

const cutLine: LayerLook = { colour: 7, line: 'Continuous', width: 0.25 };

/** What a cutting table tells apart by layer: what it cuts, bends and scribes, and what it leaves alone. */
const CUT_LAYERS = {
  outline: cutLine,
  holes: { ...cutLine, colour: 1 },
  'bend-lines': { ...cutLine, colour: 5, line: 'middle-lines' },
  'scribe-lines': { ...cutLine, colour: 94 },
  words: { ...cutLine, colour: 8 },
} as const satisfies Record<string, LayerLook>;

type CutLayer = keyof typeof CUT_LAYERS;

/** mm between plates, the height of words, and how many plates stand in a row. */
const BETWEEN = 40;
const LETTERS = 4;
const IN_A_ROW = 4;

/** A bulge of half a circle, counter-clockwise. */
const HALF_TURN = 1;

function drawCut(file: DrawingFile<CutLayer>, cut: TemplateCut, at: (place: ViewPoint) => Spot): void {
  for (const { places, around } of cut.outlines) {
    if (around === undefined) {
      file.polyline('outline', places.map(at), true);
      continue;
    }
    const [a, b] = places.map(at) as [Spot, Spot];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const aside: Spot = [(-(b[1] - a[1]) / length) * around, ((b[0] - a[0]) / length) * around];
    // Down one side, half around the second centre, back, half around the first: counter-clockwise.
    const corners: Spot[] = [
      [a[0] - aside[0], a[1] - aside[1]],
      [b[0] - aside[0], b[1] - aside[1]],
      [b[0] + aside[0], b[1] + aside[1]],
      [a[0] + aside[0], a[1] + aside[1]],
    ];
    file.polyline('outline', corners, true, [0, HALF_TURN, 0, HALF_TURN]);
  }
  for (const centre of cut.centres) file.stroke('holes', circle(at(centre), PUNCH_RADIUS));
  for (const opening of cut.openings) file.polyline('holes', opening.map(at), true);
  for (const [place, words] of cut.names ?? [])
    file.text('words', words, at(place), { height: 0.5 * LETTERS });
  for (const [from, to] of cut.bends) file.stroke('bend-lines', { kind: 'line', a: at(from), b: at(to) });
  for (const [from, to] of cut.marks) file.stroke('scribe-lines', { kind: 'line', a: at(from), b: at(to) });
}

/** What a template covers with its plate, mm right and down. */
function roomOf({ bounds, cut }: Template) {
  const places = cut.outlines.flatMap(({ places: each, around = 0 }) =>
    each.flatMap(([x, y]) => [
      [x - around, y - around],
      [x + around, y + around],
    ]),
  );
  return {
    left: Math.min(bounds.left, ...places.map(([x]) => x as number)),
    right: Math.max(bounds.right, ...places.map(([x]) => x as number)),
    top: Math.min(bounds.top, ...places.map(([, y]) => y as number)),
    bottom: Math.max(bounds.bottom, ...places.map(([, y]) => y as number)),
  };
}

/**
 * The templates of a layout as plates at full size for a plasma or laser table: closed outlines, holes, bend lines and
 * scribe lines each on their own layer, beside one another with their names. The kerf is the table's business.
 */
export function templatesDxf(job: DrawingJob): string {
  const model = sheetModelOf({ ...job, kind: 'templates', paper: 'a4', date: new Date(0) });
  const { unit, fraction } = job;
  const file = new DrawingFile<CutLayer>({ unit, fraction, scale: 1, layers: CUT_LAYERS });
  let [x, y, tallest] = [0, 0, 0];
  TEMPLATES.flatMap((of) => of(model)).forEach((template, i) => {
    if (i > 0 && i % IN_A_ROW === 0) [x, y, tallest] = [0, y - tallest - BETWEEN, 0];
    const { left, right, top, bottom } = roomOf(template);
    const head = y - LETTERS * 4;
    drawCut(file, template.cut, ([across, down]) => [x + across - left, head - (down - top)]);
    file.text('words', template.title, [x, y], { height: LETTERS });
    file.text('words', template.note, [x, y - LETTERS * 1.6], { height: 0.6 * LETTERS });
    x += Math.max(right - left, 0.5 * LETTERS * template.note.length) + BETWEEN;
    tallest = Math.max(tallest, bottom - top + LETTERS * 4);
  });
  file.text(
    'words',
    `${job.document.name}: plates to lay on the parts, full size. Holes are for a punch, ${2 * PUNCH_RADIUS} mm; the parts' own holes and shapes are their makers'.`,
    [0, LETTERS * 5],
    { height: LETTERS },
  );
  file.text('words', CAUTION, [0, LETTERS * 3], { height: LETTERS });
  return file.toString();
}

import type { ViewPoint } from '../../../../shared-math/drawing/index.ts';
import type { ShaftDocument } from '../../../../shared-math/layout/index.ts';
import {
  type EndWork,
  endsAt,
  endWords,
  endWork,
  flatWidth,
  meetingPlaces,
  routeOf,
  shaftEndName,
  sizeWords,
} from '../../../../shared-math/shaft/index.ts';
import { INK, SOFT } from '../../pens/colours.ts';
import type { PrintPen } from '../../pens/print-pen.ts';
import type { SheetModel } from '../sheet-model.ts';
import type { TemplateCut } from './cut.ts';
import { centreMark, dimension, type OnPaper, type Template, tag } from './template.ts';

// Strips that wrap around a shaft's end: where its notch and dimple go. Right is along the shaft from the tip, down is
// around it, on the surface as it is: over the rounds and across the flats.

/** mm beyond the last mark, and of paper to glue the strip by. */
const BEYOND = 22;
const GLUE = 8;
/** mm from strip to strip on the paper, below and beside one another; rows of two. */
const BETWEEN = 21.4;
const ASIDE = 34;
const ROWS = 2;

/** A stretch of the surface, going around: a round or a flat. mm. */
interface Stretch {
  readonly kind: 'round' | 'flat';
  readonly from: number;
  readonly to: number;
}

/**
 * The way around a section. A double-D of diameter d and w across its flats: each flat is √(d² - w²) wide and takes the
 * angle 2 acos(w/d); each round is what is left of half a turn.
 */
export function surfaceOf(
  diameter: number,
  acrossFlats: number | undefined,
): { stretches: Stretch[]; whole: number } {
  if (acrossFlats === undefined || acrossFlats >= diameter) {
    const whole = Math.PI * diameter;
    return { stretches: [{ kind: 'round', from: 0, to: whole }], whole };
  }
  const flat = flatWidth(diameter, acrossFlats);
  const round = (diameter / 2) * (Math.PI - 2 * Math.acos(acrossFlats / diameter));
  const stretches: Stretch[] = [];
  let at = 0;
  for (const kind of ['round', 'flat', 'round', 'flat'] as const) {
    const to = at + (kind === 'round' ? round : flat);
    stretches.push({ kind, from: at, to });
    at = to;
  }
  return { stretches, whole: at };
}

/**
 * The edge of a notch on the surface of a round of radius r: a bolt of radius b that crosses at `offset` from the axis
 * cuts the surface at s along the shaft from its middle where r cos θ = offset - √(b² - s²). Points along and around,
 * mm from the notch's middle, closed.
 */
export function notchEdge(r: number, b: number, offset: number): ViewPoint[] {
  const half = (s: number) =>
    r * Math.acos(Math.min(1, Math.max(-1, (offset - Math.sqrt(Math.max(0, b * b - s * s))) / r)));
  // The bolt leaves the surface where its own side stands at the round's top.
  const reach = offset - r > 0 ? Math.sqrt(Math.max(0, b * b - (offset - r) ** 2)) : b;
  const steps = 24;
  const along = Array.from({ length: steps + 1 }, (_, i) => -reach * Math.cos((Math.PI * i) / steps));
  return [
    ...along.map((s): ViewPoint => [s, -half(s)]),
    ...along.reverse().map((s): ViewPoint => [s, half(s)]),
  ];
}

interface Strip {
  readonly work: EndWork;
  readonly title: string;
  readonly diameter: number;
  readonly surface: ReturnType<typeof surfaceOf>;
  readonly length: number;
  readonly offset: number;
  readonly words: string;
}

function stripOf(model: SheetModel, shaft: ShaftDocument, work: EndWork): Strip[] {
  const { notch, dimple, place } = work;
  const { end, into } = endsAt(shaft, place);
  if (!end || !(notch || dimple)) return [];
  const last = Math.max(notch ? notch.fromTip + notch.width / 2 : 0, dimple?.fromTip ?? 0, work.engaged ?? 0);
  return [
    {
      work,
      title: endWords(end, model.style),
      diameter: end.diameter,
      surface: surfaceOf(end.diameter, end.kind === 'double-d' ? end.acrossFlats : undefined),
      length: last + BEYOND,
      offset: into && 'bolt' in into && into.bolt ? into.bolt.offset : 0,
      words: shaftEndName(place),
    },
  ];
}

function drawStrip(pen: PrintPen, model: SheetModel, strip: Strip, at: OnPaper, top: number): void {
  const { surface, length, work } = strip;
  const { notch, dimple, engaged } = work;
  const corner = (right: number, down: number) => at([right, top + down]);
  const outline = [
    ...corner(0, 0),
    ...corner(length, 0),
    ...corner(length, surface.whole),
    ...corner(0, surface.whole),
  ];
  pen.stroke(outline, { width: 0.3, colour: INK }, true);
  const glue = [
    ...corner(0, surface.whole),
    ...corner(length, surface.whole),
    ...corner(length - 3, surface.whole + GLUE),
    ...corner(3, surface.whole + GLUE),
  ];
  pen.stroke(glue, { width: 0.12, colour: SOFT, dash: [1, 1] }, true);
  for (const { kind, from, to } of surface.stretches) {
    const [x1, y1] = corner(0, from);
    const [x2] = corner(length, from);
    if (from > 0) pen.line(x1, y1, x2, y1, { width: 0.15, colour: INK, dash: [2, 1] });
    tag(pen, kind, [x2 - 2, corner(0, (from + to) / 2)[1] + 1], 'right', true);
  }
  tag(pen, strip.words, [corner(0, 0)[0], corner(0, -13.4)[1]]);
  tag(pen, strip.title, [corner(0, 0)[0], corner(0, -10)[1]], 'left', true);
  const round = surface.stretches[0] as Stretch;
  const flat = surface.stretches.find(({ kind }) => kind === 'flat');
  const middle = (round.from + round.to) / 2;
  if (notch) {
    const edge = notchEdge(strip.diameter / 2, notch.width / 2, strip.offset).flatMap(([along, around]) => [
      ...corner(notch.fromTip + along, middle + around),
    ]);
    pen.stroke(edge, { width: 0.35, colour: INK }, true);
    centreMark(pen, corner(notch.fromTip, middle), 5);
    dimension(pen, corner(0, 0), corner(notch.fromTip, 0), -4, sizeWords(notch.fromTip, model.style));
  }
  if (dimple) {
    const down = flat ? (flat.from + flat.to) / 2 : middle;
    centreMark(pen, corner(dimple.fromTip, down), 5);
    const y = notch ? surface.whole + 4 : 0;
    dimension(pen, corner(0, y), corner(dimple.fromTip, y), -4, sizeWords(dimple.fromTip, model.style));
  }
  if (engaged !== undefined) {
    const [x, y1] = corner(engaged, 0);
    const [, y2] = corner(engaged, surface.whole);
    pen.line(x, y1, x, y2, { width: 0.2, colour: INK, dash: [0.4, 0.9] });
    tag(pen, 'in the joint to here', [x, corner(0, surface.whole)[1] + 5.5], 'centre', true);
  }
  const [x, y] = corner(-2.4, surface.whole / 2);
  pen.turnedText('tip', x, y, { face: 'heading', size: 8.2, colour: INK }, 90, 'centre');
}

/** A strip as a plate to be bent around its end: its edges, its notch and dimple, and where its flats begin. */
function stripCut(strip: Strip, aside: number, top: number): TemplateCut {
  const { surface, length, work, diameter, offset } = strip;
  const { notch, dimple } = work;
  const at = (right: number, down: number): ViewPoint => [right + aside, top + down];
  const round = surface.stretches[0] as Stretch;
  const flat = surface.stretches.find(({ kind }) => kind === 'flat');
  const middle = (round.from + round.to) / 2;
  return {
    outlines: [{ places: [at(0, 0), at(length, 0), at(length, surface.whole), at(0, surface.whole)] }],
    centres: dimple ? [at(dimple.fromTip, flat ? (flat.from + flat.to) / 2 : middle)] : [],
    openings: notch
      ? [
          notchEdge(diameter / 2, notch.width / 2, offset).map(([along, around]) =>
            at(notch.fromTip + along, middle + around),
          ),
        ]
      : [],
    bends: surface.stretches.slice(1).map(({ from }) => [at(0, from), at(length, from)] as const),
    marks: [],
    names: [[at(0, -3), `${strip.words}, ${strip.title}`]],
  };
}

function joinedCuts(cuts: readonly TemplateCut[]): TemplateCut {
  return {
    outlines: cuts.flatMap(({ outlines }) => outlines),
    centres: cuts.flatMap(({ centres }) => centres),
    openings: cuts.flatMap(({ openings }) => openings),
    bends: cuts.flatMap(({ bends }) => bends),
    marks: cuts.flatMap(({ marks }) => marks),
    names: cuts.flatMap(({ names = [] }) => names),
  };
}

/** The strips of a shaft's ends that are notched or dimpled, one below the other. */
export function shaftStrips(model: SheetModel): Template[] {
  const { shaft } = model.layout;
  if (!shaft) return [];
  const route = routeOf(shaft);
  const strips = meetingPlaces(shaft).flatMap((place) => stripOf(model, shaft, endWork(shaft, route, place)));
  const sheets: Strip[][] = [];
  // Two beside one another, and two such rows: as many as a page takes.
  for (let i = 0; i < strips.length; i += 2 * ROWS) sheets.push(strips.slice(i, i + 2 * ROWS));
  const wide = Math.max(...strips.map(({ length }) => length)) + ASIDE;
  const tall = Math.max(...strips.map(({ surface }) => surface.whole)) + GLUE + BETWEEN;
  return sheets.map(
    (list, sheet): Template => ({
      title: sheets.length > 1 ? `Shaft ends, strips ${sheet + 1} of ${sheets.length}` : 'Shaft ends, strips',
      note: 'Cut out and wrapped around the end, “tip” on its edge',
      ways: [],
      bounds: {
        left: -8,
        right: Math.min(2, list.length) * wide - ASIDE + 4,
        top: -15.4,
        bottom: Math.ceil(list.length / 2) * tall - BETWEEN + 4,
      },
      words: [
        'The notch lies in the middle of a round, the dimple on a flat where the screw meets it. Check both through the joint’s own holes before anything is cut, with the shaft pushed in to the dotted line, as the layout is drawn: the joint rules, not this paper.',
        'Depths stand with the steps of the build sheet.',
      ],
      cut: joinedCuts(list.map((strip, i) => stripCut(strip, (i % 2) * wide, Math.floor(i / 2) * tall))),
      draw(pen, at) {
        list.forEach((strip, i) => {
          const aside = (i % 2) * wide;
          drawStrip(
            pen,
            model,
            strip,
            ([right, down]) => at([right + aside, down]),
            Math.floor(i / 2) * tall,
          );
        });
      },
    }),
  );
}

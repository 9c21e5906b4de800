import type { Point } from '../../../../shared-math/geometry/points.ts';
import { cross, dot, norm, scaled, subtract, unit } from '../../../../shared-math/geometry/vectors.ts';
import type { Layout, Side } from '../../../../shared-math/layout/index.ts';
import {
  type CarLink,
  carLinks,
  cutLength,
  type EndMaking,
  type EndRoom,
  LINK_END_WORDS,
  linkMaking,
  USUAL_SOURCE,
} from '../../../../shared-math/links/index.ts';
import { assumedWords, sectionWords, threadWords } from '../../../../shared-math/shelf/index.ts';
import type { Radians } from '../../../../shared-math/units/index.ts';
import { type Block, heading, paragraph } from '../../flow/block.ts';
import { type CellText, table } from '../../flow/table.ts';
import { BODY, BODY_BOLD, SMALL, SMALL_INK } from '../../pens/styles.ts';
import { angle } from '../figures.ts';
import { armList, linkList, pitmanFromPlumb } from '../links.ts';
import type { SheetModel } from '../sheet-model.ts';
import { effectWords, lengthEffectOf, sixteenthWords } from './sixteenths.ts';

// How every link and arm is made: what is cut, from what, how its ends stand, and what an error there does.

/** The other unit below the first, small. */
function bothCell({ length, other }: SheetModel, mm: number, bold = false): CellText {
  return [
    [length(mm), bold ? BODY_BOLD : BODY],
    [other(mm), SMALL_INK],
  ];
}

/** What both ends are alike in, said once, or what each is, with its name before it. */
function bothEnds(
  ends: readonly [EndMaking, EndMaking],
  words: (end: EndMaking) => string,
): (readonly [string, typeof SMALL_INK])[] {
  const [first, second] = ends.map(words) as [string, string];
  if (first === second) return [[`both ends ${first}`, SMALL_INK]];
  return ends.map(
    (end, i) => [`${LINK_END_WORDS[end.name]} ${i === 0 ? first : second}`, SMALL_INK] as const,
  );
}

/** "1 9/16 in, 38.9 mm (assumed)": what an end takes off, from its ball or bore to the tube. */
const takeOffWords = ({ length, other }: SheetModel, { takeOff }: EndMaking) =>
  `${length(takeOff.value)}, ${other(takeOff.value)}${assumedWords(takeOff.assumed)}`;

function threadOf(model: SheetModel, end: EndMaking): string {
  if (end.kind === 'welded') return `welded eye or sleeve${assumedWords(end.kindAssumed)}`;
  const thread = `${threadWords(end.thread.value, end.pitch.value, model.style)}${assumedWords(end.thread.assumed)}`;
  return `${thread}${end.hand ? `, ${end.hand}-hand` : ''}`;
}

/** The threads of both ends; where nobody said which hand, that one of each lets the link be set by turning it. */
function threadsCell(model: SheetModel, ends: readonly [EndMaking, EndMaking]): CellText {
  const open = ends.every((end) => end.kind === 'threaded' && end.hand === undefined);
  return [
    ...bothEnds(ends, (end) => threadOf(model, end)),
    ...(open ? [['one of each hand (assumed)', SMALL_INK] as const] : []),
  ];
}

const SHORT_WORDS: Record<EndRoom['short'], string> = {
  '': '',
  thread: 'too little thread',
  'jam-nut': 'no room for the jam nut',
  both: 'too little thread, no room for the jam nut',
};

/** How much thread stands in the tube at each end, and how far the link can be set. */
function threadCell(
  model: SheetModel,
  rooms: readonly (EndRoom | undefined)[],
  shorter: number,
  longer: number,
): CellText {
  const { length } = model;
  const threaded = rooms.filter((room) => room !== undefined);
  if (threaded.length === 0) return 'none: it cannot be set';
  const engaged = threaded.map((room) => length(room.engaged));
  const each =
    new Set(engaged).size === 1 ? `${engaged[0]}${threaded.length > 1 ? ' each' : ''}` : engaged.join(', ');
  const short = [...new Set(threaded.map((room) => SHORT_WORDS[room.short]))].filter(Boolean);
  const set =
    length(shorter) === length(longer)
      ? `${length(shorter)} either way`
      : `${length(shorter)} shorter to ${length(longer)} longer`;
  return [
    [
      `${each}${assumedWords(threaded.some(({ assumed }) => assumed))}, at least ${length((threaded[0] as EndRoom).wanted)}`,
      SMALL_INK,
    ],
    [`can be set ${set}`, SMALL_INK],
    ...short.map((words) => [words, BODY_BOLD] as const),
  ];
}

function linkRow(model: SheetModel, link: CarLink): CellText[] {
  const making = linkMaking(model.layout, link.key);
  const cut = cutLength(making, link.centres);
  const effect = lengthEffectOf(model, link.key === 'rods' ? 'fourBar' : link.key);
  const bent =
    making.offset.value > 0
      ? [[`bent ${model.length(making.offset.value)} off straight`, SMALL_INK] as const]
      : [];
  return [
    [
      [`${link.count} × ${link.name}`, BODY_BOLD],
      ...(link.count === 2 ? [['one each side, alike', SMALL] as const] : []),
      ...bent,
    ],
    bothCell(model, link.centres, true),
    bothEnds(making.ends, (end) => takeOffWords(model, end)),
    cut.ok
      ? [
          [model.length(cut.value.cut), BODY_BOLD],
          [model.other(cut.value.cut), SMALL_INK],
          ...(cut.value.assumed ? [['by assumed ends', SMALL_INK] as const] : []),
        ]
      : [['its ends take off more than there is', BODY_BOLD]],
    [[sectionWords(making, model.style), SMALL_INK]],
    threadsCell(model, making.ends),
    cut.ok ? threadCell(model, cut.value.rooms, cut.value.shorter, cut.value.longer) : '',
    [[effectWords(model, effect), SMALL_INK]],
  ];
}

/** Rods and leaves whose ends at the axle no layout holds: how far the ball stands from the axle's line. */
function otherRows(model: SheetModel): CellText[][] {
  const cut = new Set(carLinks(model.layout).map(({ name }) => name.split(',')[0]));
  const rods = linkMaking(model.layout, 'rods');
  return linkList(model.layout)
    .filter(({ name }) => !cut.has(name.split(',')[0]))
    .map(({ name, between, length }) => {
      const bought = / spring/.test(name);
      const acrossTheCar = /^(Rocker|Transverse spring)/.test(name);
      const making = bought || acrossTheCar ? undefined : rods;
      return [
        [
          [name, BODY_BOLD],
          [between, SMALL],
        ],
        bothCell(model, length, true),
        '',
        [
          [
            bought ? 'as bought' : making ? 'to the axle’s brackets: measure' : 'its template is full size',
            SMALL_INK,
          ],
        ],
        making ? [[sectionWords(making, model.style), SMALL_INK]] : '',
        making ? [[`ball ${threadOf(model, making.ends[1])}`, SMALL_INK]] : '',
        '',
        acrossTheCar ? '' : [[effectWords(model, lengthEffectOf(model, 'side')), SMALL_INK]],
      ];
    });
}

/** Every link: centre to centre, what its ends take off, how long its tube is cut, of what, and what an error does. */
export function linkMakingBlocks(model: SheetModel): Block[] {
  const rows = [...carLinks(model.layout).map((link) => linkRow(model, link)), ...otherRows(model)];
  const assumed = carLinks(model.layout).some(({ key }) => {
    const { outside, wall, material, ends } = linkMaking(model.layout, key);
    return [outside, wall, material, ...ends.map(({ takeOff }) => takeOff)].some((figure) => figure?.assumed);
  });
  return [
    heading('Links'),
    table(
      [
        { head: 'Link', width: 1.5 },
        { head: 'Centre to centre', width: 1.05, align: 'right' },
        { head: 'Less at each end', width: 1.55 },
        { head: 'Cut the tube', width: 1.1, align: 'right' },
        { head: 'Of', width: 1.85 },
        { head: 'Threads', width: 1.75 },
        { head: 'Thread in the tube', width: 1.75 },
        { head: `${sixteenthWords(model)} there does`, width: 1.3 },
      ],
      rows,
    ),
    paragraph(
      `${assumed ? `What is called assumed was not given in this layout: it is usual (${USUAL_SOURCE}). Measure the ends that you have, then cut. ` : ''}Each figure is rounded by itself. Cut so that both ends stand half-way in their adjustment. Never bottomed: mark or drill each tube so that the thread can be seen.`,
      SMALL,
    ),
  ];
}

/** An arm that turns about a kingpin: how it lies seen along it, and how high its ball stands on it. rad, mm. */
function spindleArm({ axle }: Layout, side: Side, ball: Point) {
  const { kingpinBottom, kingpinTop } = axle[side];
  const axis = unit(subtract(kingpinTop, kingpinBottom));
  const arm = subtract(ball, kingpinBottom);
  const up = dot(arm, axis);
  const reach = subtract(arm, scaled(axis, up));
  const ahead = unit(subtract([1, 0, 0], scaled(axis, axis[0])));
  const along = dot(reach, ahead);
  const off = Math.atan2(norm(cross(ahead, reach)), Math.abs(along)) as Radians;
  // Inboard of the line fore and aft through the kingpin.
  const inboard = side === 'left' ? reach[1] < 0 : reach[1] > 0;
  return { up, off, way: along >= 0 ? 'forward' : 'back', lean: inboard ? 'in' : 'out' };
}

/** How an arm on a spindle stands, in words: its angle, and its ball's height on the kingpin. */
function spindleWords(model: SheetModel, side: Side, ball: Point): readonly [lies: string, height: string] {
  const { up, off, way, lean } = spindleArm(model.layout, side, ball);
  const straight = angle(off) === '0.0°';
  return [
    straight ? `straight ${way}` : `${angle(off)} ${lean} of straight ${way}, seen along the kingpin`,
    `ball ${model.both(Math.abs(up))} ${up >= 0 ? 'above' : 'below'} the kingpin’s lower end, along it`,
  ];
}

/** How the pitman arm stands with the box centred, and how far its ball lies off the sector's centre. */
function pitmanWords({ layout, both }: SheetModel): readonly [lies: string, height: string] {
  const { sectorAxis, sectorCentre, pitmanBall } = layout.steering.box;
  const plumb = pitmanFromPlumb(layout);
  const axis = unit(sectorAxis);
  const arm = subtract(pitmanBall, sectorCentre);
  const along = Math.abs(dot(arm, axis));
  const drop = sectorCentre[2] - pitmanBall[2];
  const lies =
    plumb === undefined
      ? 'level, box centred'
      : angle(plumb.angle as Radians) === '0.0°'
        ? 'plumb, box centred'
        : `${angle(plumb.angle as Radians)} ${plumb.way} of plumb, box centred`;
  return [
    lies,
    `ball ${both(Math.abs(drop))} ${drop >= 0 ? 'below' : 'above'} the sector centre; ${both(along)} off it along the sector axis${along > 0 ? `; straight to it ${both(norm(arm))}` : ''}`,
  ];
}

/** Every arm: length, angle, height and drop, and what an error does. */
export function armBlocks(model: SheetModel): Block[] {
  const { layout } = model;
  const { dragLinkTo, dragLinkBall } = layout.steering;
  const rows = armList(layout).map(({ name, between, length }) => {
    const side: Side = name.endsWith(', right') ? 'right' : 'left';
    const [lies, height] = name.startsWith('Pitman')
      ? pitmanWords(model)
      : name.startsWith('Steering arm')
        ? spindleWords(model, dragLinkTo, dragLinkBall)
        : spindleWords(model, side, layout.axle[side].tieRodBall);
    const effect = lengthEffectOf(model, name.startsWith('Tie rod') ? 'tieRodArm' : 'arm', length);
    return [
      [
        [name, BODY_BOLD],
        [name.startsWith('Steering arm') ? `${between}, ${dragLinkTo} side` : between, SMALL],
      ],
      bothCell(model, length, true),
      lies,
      height,
      [[effectWords(model, effect), SMALL_INK]],
    ] as CellText[];
  });
  return [
    heading('Arms'),
    table(
      [
        { head: 'Arm', width: 1.5 },
        { head: 'Axis to ball', width: 1, align: 'right' },
        { head: 'Lies', width: 2.2 },
        { head: 'Height, drop', width: 3 },
        { head: `${sixteenthWords(model)} there does`, width: 1.4 },
      ],
      rows,
    ),
  ];
}

import { distance } from '../geometry/points.ts';
import { ballJoints } from '../joints/index.ts';
import { hasRigidRods, type Layout, LOCATION_FACTS } from '../layout/index.ts';
import {
  carLinks,
  cutLength,
  type EndMaking,
  LINK_END_WORDS,
  type LinkMaking,
  linkMaking,
  tradeSize,
  USUAL_ENDS,
} from '../links/index.ts';
import { sizeWords } from '../shaft/index.ts';
import { type Degrees, formatDegrees, formatLength, type LengthStyle, MM_PER_INCH } from '../units/index.ts';
import type { PartNeed, Tilts } from './part-need.ts';

// The car's links as what is cut and bought for them: tubes, ends, jam nuts. A size that nobody gave is called assumed.

/** "assumed" behind a figure that nobody gave. */
export const assumedWords = (assumed: boolean) => (assumed ? ' (assumed)' : '');

const MATERIAL_WORDS = {
  'mild-steel': 'mild steel',
  'drawn-steel': 'drawn steel',
  chromoly: 'chromoly steel',
  stainless: 'stainless steel',
} as const;

/** "7/8 in (assumed)": a size of which nobody said anything is called as the trade calls it. */
const saidSize = ({ value, assumed }: LinkMaking['outside'], style: LengthStyle) =>
  sizeWords(assumed ? tradeSize(value, style.unit) : value, style);

/** "tube 7/8 in outside (assumed), wall 5/32 in (assumed), drawn steel (assumed)". */
export function sectionWords({ outside, wall, material }: LinkMaking, style: LengthStyle): string {
  const of = `${MATERIAL_WORDS[material.value]}${assumedWords(material.assumed)}`;
  const round = `${saidSize(outside, style)} outside${assumedWords(outside.assumed)}`;
  return wall
    ? `tube ${round}, wall ${saidSize(wall, style)}${assumedWords(wall.assumed)}, ${of}`
    : `solid rod ${round}, ${of}`;
}

/** A length that is laid out by tape, in the reader's fractions; sizes that a caliper reads are `sizeWords`. */
export const tapeWords = (mm: number, style: LengthStyle) => formatLength(mm, style);

/** A thread by its name where it is a usual one, else by its size: "5/8-18", "M16 × 2". */
export function threadWords(diameter: number, pitch: number, style: LengthStyle): string {
  const usual = USUAL_ENDS.find(
    (end) => Math.abs(end.diameter - diameter) < 0.02 && Math.abs(end.pitch - pitch) < 0.005,
  );
  if (usual) return usual.words;
  return style.unit === 'in'
    ? `${sizeWords(diameter, style)}, ${Number((MM_PER_INCH / pitch).toFixed(2))} threads to the inch`
    : `${sizeWords(diameter, style)} × ${Number(pitch.toFixed(2))}`;
}

/** The most that balls tilt; undefined while one of them is not known. */
function largest(tilts: readonly (Degrees | undefined)[]): Degrees | undefined {
  const known = tilts.filter((tilt) => tilt !== undefined);
  return known.length === tilts.length ? Math.max(...known) : undefined;
}

const tiltWords = (angle: Degrees | undefined) =>
  angle === undefined ? '' : `, ball tilts up to ${formatDegrees(angle, 0)}`;

/** The hand of each end: as given; of two that nobody gave one of each, so that the link is set by turning it. */
function handsOf([first, second]: readonly [EndMaking, EndMaking]): readonly ('right' | 'left')[] {
  const given = [first, second].map((end) => (end.kind === 'threaded' ? end.hand : undefined));
  const other = (hand: 'right' | 'left') => (hand === 'right' ? 'left' : 'right');
  const one = given[0] ?? (given[1] ? other(given[1]) : 'right');
  return [one, given[1] ?? other(one)];
}

/** Ends and jam nuts of links that are alike. */
function endNeeds(
  name: string,
  making: LinkMaking,
  ids: readonly [string, string],
  count: number,
  tilts: Tilts,
  style: LengthStyle,
): PartNeed[] {
  const size = (mm: number) => sizeWords(mm, style);
  const hands = handsOf(making.ends);
  const bothThreaded = making.ends.every(({ kind }) => kind === 'threaded');
  const ballAngle = largest(ids.map(tilts));
  return making.ends.flatMap((end, i): PartNeed[] => {
    const at = LINK_END_WORDS[end.name];
    if (end.kind === 'welded')
      return [
        {
          wanted: { kind: 'fixing' },
          count,
          words: `${name}, ${at}: bushed eye or sleeve to weld${assumedWords(end.kindAssumed)}, ${size(end.takeOff.value)} from its centre to the tube${assumedWords(end.takeOff.assumed)}`,
        },
      ];
    // A single threaded end need not be of either hand.
    const hand = bothThreaded || end.hand ? hands[i] : undefined;
    const thread = `${threadWords(end.thread.value, end.pitch.value, style)}${assumedWords(end.thread.assumed)}`;
    const handed = hand === undefined ? '' : `, ${hand}-hand`;
    return [
      {
        wanted: { kind: 'rod-end', hand, tube: making.outside.value, ballAngle },
        count,
        words: `${name} end${handed === '' ? '' : `, ${hand}-hand thread`} ${thread}, into tube ${saidSize(making.outside, style)} outside${assumedWords(making.outside.assumed)}${tiltWords(ballAngle)}`,
      },
      { wanted: { kind: 'fixing' }, count, words: `Jam nut ${thread}${handed}` },
    ];
  });
}

/** Drag link, tie rod, lateral bars and four bars: tube, ends and jam nuts of each. */
export function linkNeeds(layout: Layout, tilts: Tilts, style: LengthStyle): PartNeed[] {
  return carLinks(layout).flatMap(({ key, name, ends, centres, count }) => {
    const making = linkMaking(layout, key);
    const cut = cutLength(making, centres);
    const long = cut.ok
      ? `cut ${tapeWords(cut.value.cut, style)} long${cut.value.assumed ? ' (by assumed ends)' : ''}`
      : 'its ends take off more than there is';
    return [
      {
        wanted: {
          kind: 'tube',
          diameter: making.outside.value,
          length: cut.ok ? cut.value.cut : centres,
        } as const,
        count,
        words: `${name}, ${tapeWords(centres, style)} between ball centres: ${sectionWords(making, style)}, ${long}`,
      },
      ...endNeeds(name, making, ends, count, tilts, style),
    ];
  });
}

/** What rods that are rigid with the axle are called, and how many tubes each side has. */
const RIGID_RODS = {
  hairpins: { name: 'Hairpin', sides: 2, tubes: 2 },
  'split-rods': { name: 'Radius rod', sides: 2, tubes: 1 },
  'quarter-elliptic': { name: 'Radius rod', sides: 2, tubes: 1 },
  wishbone: { name: 'Wishbone rod', sides: 2, tubes: 1 },
} as const;

/** Hairpins, radius rods and the wishbone: their tubes, whose ends at the axle no layout holds, and the balls at the frame. */
export function rodNeeds(layout: Layout, tilts: Tilts, style: LengthStyle): PartNeed[] {
  const { kind } = layout.location;
  if (kind === 'four-bar' || kind === 'parallel-leaf' || !(hasRigidRods(layout) || kind === 'wishbone'))
    return [];
  const { name, sides, tubes } = RIGID_RODS[kind];
  const making = linkMaking(layout, 'rods');
  const balls = ballJoints(layout).filter(({ id }) => id.startsWith('location.'));
  const ballAngle = largest(balls.map(({ id }) => tilts(id)));
  const frameEnd = making.ends[1];
  const nut =
    frameEnd.kind === 'threaded'
      ? [
          {
            wanted: { kind: 'fixing' } as const,
            count: balls.length,
            words: `Jam nut ${threadWords(frameEnd.thread.value, frameEnd.pitch.value, style)}${assumedWords(frameEnd.thread.assumed)}`,
          },
        ]
      : [];
  return [
    {
      wanted: { kind: 'fixing' },
      count: sides * tubes,
      words: `${name}${tubes > 1 ? ', one of its two tubes' : ''}: ${sectionWords(making, style)}; its length is measured to the axle’s brackets, which are not in this layout`,
    },
    {
      wanted: { kind: 'rod-end', hand: undefined, tube: making.outside.value, ballAngle },
      count: balls.length,
      words: `${LOCATION_FACTS[kind].rodEnd}, into tube ${saidSize(making.outside, style)} outside${assumedWords(making.outside.assumed)}${tiltWords(ballAngle)}`,
    },
    ...nut,
  ];
}

/** The rocker of a Watt's linkage: a plate cut to its template, and the bolt that it turns on. */
export function rockerNeeds({ lateral }: Layout, style: LengthStyle): PartNeed[] {
  if (lateral.kind !== 'watt') return [];
  const arm = (bar: 'upper' | 'lower') =>
    `${tapeWords(distance(lateral.pivot, lateral[bar].rocker), style)} to the ${bar} bar`;
  return [
    {
      wanted: { kind: 'fixing' },
      count: 1,
      words: `Rocker, from its bolt ${arm('upper')} and ${arm('lower')}; thickness not given in this layout`,
    },
    { wanted: { kind: 'fixing' }, count: 1, words: 'Rocker bolt with bushing' },
  ];
}

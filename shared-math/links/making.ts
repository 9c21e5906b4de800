import {
  hasRigidRods,
  type Layout,
  type LinkEndDocument,
  type LinkMaterial,
  type ThreadedEnd,
} from '../layout/index.ts';
import { type ArmKey, type EndName, LINK_ENDS, type LinkKey } from './link-keys.ts';
import {
  ENGAGEMENT_WANTED,
  USUAL_ADJUSTER,
  USUAL_ARM,
  USUAL_HAIRPIN_OUTSIDE,
  USUAL_HAIRPIN_WALL,
  USUAL_MATERIAL,
  USUAL_OUTSIDE,
  USUAL_RADIUS_ROD_OUTSIDE,
  USUAL_RADIUS_ROD_WALL,
  USUAL_SLEEVE,
  USUAL_THREAD,
  USUAL_WALL,
  usualEndFor,
} from './usual.ts';

/** A figure and whether somebody gave it. An assumed one is shown as that, wherever it is shown. */
export interface Given<Value> {
  readonly value: Value;
  readonly assumed: boolean;
}

/** What a link is made of; mm. */
export interface LinkMaking {
  readonly section: Given<'tube' | 'rod'>;
  readonly outside: Given<number>;
  /** Undefined if it is a solid rod. */
  readonly wall: Given<number> | undefined;
  readonly material: Given<LinkMaterial>;
  /** How far a bent link stands from its straight line; assumed straight where it is not given. */
  readonly offset: Given<number>;
  readonly ends: readonly [EndMaking, EndMaking];
}

/** How one end of a link is made; mm. */
export type EndMaking = ThreadedMaking | WeldedMaking;

export interface ThreadedMaking {
  readonly kind: 'threaded';
  readonly name: EndName;
  /** True if nobody said that it is threaded. */
  readonly kindAssumed: boolean;
  readonly takeOff: Given<number>;
  readonly thread: Given<number>;
  readonly pitch: Given<number>;
  /** Undefined if nobody said: one end of each hand lets a link be set by turning it. */
  readonly hand: 'right' | 'left' | undefined;
  readonly reach: Given<number>;
  readonly threadLength: Given<number>;
  readonly jamNut: Given<number>;
  readonly adjuster: Given<number>;
}

export interface WeldedMaking {
  readonly kind: 'welded';
  readonly name: EndName;
  readonly kindAssumed: boolean;
  readonly takeOff: Given<number>;
}

function givenOr<Value>(given: Value | undefined, usual: Value): Given<Value> {
  return given === undefined ? { value: usual, assumed: true } : { value: given, assumed: false };
}

/**
 * An end with all that is not given filled in by what is usual for its thread. A take-off that nobody gave is where the
 * end stands half-way between too little thread in the tube and a jam nut at the end of its thread.
 */
function threadedMaking(end: Partial<ThreadedEnd> | undefined, name: EndName): ThreadedMaking {
  const given = end?.thread;
  const usual = given ? usualEndFor(given.diameter) : USUAL_THREAD;
  const thread = givenOr(given?.diameter, usual.diameter);
  const reach = givenOr(end?.reach, Math.max(usual.reach, (end?.threadLength ?? 0) + thread.value));
  const threadLength = givenOr(
    end?.threadLength,
    Math.max(0, Math.min(usual.threadLength, reach.value - thread.value)),
  );
  const jamNut = givenOr(end?.jamNut, usual.jamNut);
  const least = reach.value - threadLength.value + jamNut.value;
  const most = reach.value - ENGAGEMENT_WANTED * thread.value;
  const takeOff = givenOr(end?.takeOff, Math.max(least, (least + most) / 2));
  // Nobody asked for a range to set it by: as much of the usual one as the end has.
  const range = Math.max(0, Math.min(USUAL_ADJUSTER, takeOff.value - least, most - takeOff.value));
  return {
    kind: 'threaded',
    name,
    kindAssumed: end === undefined,
    takeOff,
    thread,
    pitch: givenOr(given?.pitch, usual.pitch),
    hand: given?.hand,
    reach,
    threadLength,
    jamNut,
    adjuster: givenOr(end?.adjuster, range),
  };
}

function endMaking(end: LinkEndDocument | undefined, name: EndName): EndMaking {
  if (end?.kind !== 'welded') return threadedMaking(end, name);
  return { kind: 'welded', name, kindAssumed: false, takeOff: givenOr(end.takeOff, USUAL_SLEEVE) };
}

/** What the rods' ends at the axle are where nobody said: rods that are rigid with it are welded or bolted to it there. */
function weldedAtAxle(layout: Layout, key: LinkKey): boolean {
  return key === 'rods' && (layout.location.kind === 'wishbone' || hasRigidRods(layout));
}

function usualStock({ location }: Layout, key: LinkKey): { outside: number; wall: number } {
  if (key === 'rods' && location.kind === 'hairpins')
    return { outside: USUAL_HAIRPIN_OUTSIDE, wall: USUAL_HAIRPIN_WALL };
  if (key === 'rods' && location.kind === 'split-rods')
    return { outside: USUAL_RADIUS_ROD_OUTSIDE, wall: USUAL_RADIUS_ROD_WALL };
  return { outside: USUAL_OUTSIDE, wall: USUAL_WALL };
}

/**
 * What a link is made of and how its ends are made: as given, else as is usual, each figure with which of the two it is.
 * Units:  mm. Source of what is assumed: `usual.ts`, common practice, no published source.
 */
export function linkMaking(layout: Layout, key: LinkKey): LinkMaking {
  const given = layout.links?.[key];
  const usual = usualStock(layout, key);
  const section = givenOr<'tube' | 'rod'>(given?.section, 'tube');
  const outside = givenOr(layout.diameters?.[key], usual.outside);
  // A wall that nobody gave never fills a tube whose outside somebody did.
  const usualWall = Math.min(usual.wall, outside.value / 4);
  const [first, second] = LINK_ENDS[key];
  const ends = given?.ends as Partial<Record<EndName, LinkEndDocument>> | undefined;
  const firstEnd = ends?.[first];
  return {
    section,
    outside,
    wall: section.value === 'rod' ? undefined : givenOr(given?.wall, usualWall),
    material: givenOr<LinkMaterial>(given?.material, USUAL_MATERIAL),
    offset: givenOr(given?.offset, 0),
    ends: [
      firstEnd === undefined && weldedAtAxle(layout, key)
        ? { kind: 'welded', name: first, kindAssumed: true, takeOff: givenOr(undefined, USUAL_SLEEVE) }
        : endMaking(firstEnd, first),
      endMaking(ends?.[second], second),
    ],
  };
}

/** An arm's section where it leaves its boss: `width` along its swing, `thickness` along its axis; mm. */
export interface ArmMaking {
  readonly width: Given<number>;
  readonly thickness: Given<number>;
  readonly material: Given<LinkMaterial>;
}

/** What an arm is made of: as given, else as is usual. */
export function armMaking(layout: Layout, key: ArmKey): ArmMaking {
  const given = layout.links?.[key];
  return {
    width: givenOr(given?.width, USUAL_ARM.width),
    thickness: givenOr(given?.thickness, USUAL_ARM.thickness),
    material: givenOr<LinkMaterial>(given?.material, 'mild-steel'),
  };
}

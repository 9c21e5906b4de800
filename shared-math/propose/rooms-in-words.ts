import { failed, type Outcome, succeeded } from '../outcome.ts';
import { quoted } from '../outside/index.ts';
import type { Idea } from './idea.ts';

// What of the things that are one or the other a proposal may be, where a person says so.

/** Each with what it may be, in the order in which they are offered. */
export const ROOMS_IN_WORDS = {
  way: ['side', 'cross'],
  mount: ['outside', 'inside', 'top', 'through', 'crossmember'],
  'axle-side': ['behind', 'ahead'],
  'arm-way': ['down', 'up'],
} as const;

export type WordedRoomName = keyof typeof ROOMS_IN_WORDS;
export type WordedRoom<Name extends WordedRoomName> = readonly (typeof ROOMS_IN_WORDS)[Name][number][];
/** Of each what may be tried, one at the least. */
export type WordedRooms = { readonly [Name in WordedRoomName]?: WordedRoom<Name> };

export const isWordedRoomName = (name: string): name is WordedRoomName => Object.hasOwn(ROOMS_IN_WORDS, name);

type Words = { readonly [Name in WordedRoomName]: Readonly<Record<WordedRoom<Name>[number], string>> };

const WORDS: Words = {
  way: { side: 'side steer', cross: 'cross steer' },
  mount: {
    outside: 'outside the rail',
    inside: 'inside the rail',
    top: 'on top of the rail',
    through: 'inside the rail, its arm outside',
    crossmember: 'on a crossmember',
  },
  'axle-side': { behind: 'behind the axle', ahead: 'ahead of the axle' },
  'arm-way': { down: 'down, in cross steer under its box', up: 'up, in cross steer over its box' },
};

/** What it is said of: "the steering box". */
const OF: Readonly<Record<WordedRoomName, string>> = {
  way: '',
  mount: 'the steering box ',
  'axle-side': 'the steering box ',
  'arm-way': 'the pitman arm ',
};

/** One of them, as it is offered: "on top of the rail". */
export const wayWords = (name: WordedRoomName, way: string): string =>
  (WORDS[name] as Readonly<Record<string, string>>)[way] ?? '';

/** "the steering box outside the rail or on top of the rail". */
export function wordedRoomWords(name: WordedRoomName, room: readonly string[]): string {
  return `${OF[name]}${room.map((way) => wayWords(name, way)).join(' or ')}`;
}

/**
 * Reads a room from what may be tried, by name; in the order in which they are offered.
 * Outcomes: the room; or why not in one line.
 */
export function readWordedRoom<Name extends WordedRoomName>(
  name: Name,
  ways: readonly string[],
): Outcome<WordedRoom<Name>, string> {
  const known: WordedRoom<Name> = ROOMS_IN_WORDS[name];
  const all = known.join(', ');
  if (ways.every((way) => way === '')) return failed(`at least one of these is expected: ${all}`);
  for (const [i, way] of ways.entries()) {
    if (!known.some((each) => each === way)) return failed(`${quoted(way)} is not known; there are ${all}`);
    if (ways.indexOf(way) < i) return failed(`${way} is given twice`);
  }
  return succeeded(known.filter((each) => ways.includes(each)));
}

/** Whether an idea is among what may be tried. Of a box that stands only how it steers is asked: the rest stands with it. */
export function isOpenTo(rooms: WordedRooms, { way, mount, ahead, arm }: Idea): boolean {
  if (rooms.way && !rooms.way.includes(way)) return false;
  if (mount === 'held') return true;
  return (
    (!rooms.mount || rooms.mount.includes(mount)) &&
    (!rooms['axle-side'] || rooms['axle-side'].includes(ahead ? 'ahead' : 'behind')) &&
    (!rooms['arm-way'] || rooms['arm-way'].includes(arm))
  );
}

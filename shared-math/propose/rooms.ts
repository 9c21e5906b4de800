import type { Layout } from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { quoted } from '../outside/index.ts';
import {
  formatDegrees,
  type LengthStyle,
  type LengthUnit,
  lengthBeside,
  parseAngle,
  parseLength,
} from '../units/index.ts';
import {
  isWordedRoomName,
  type WordedRoomName,
  type WordedRooms,
  wordedRoomWords,
} from './rooms-in-words.ts';

// How far something that a proposal may choose may go, where a person says so: from one figure to another.

/** What has a room in figures; the other things that may be held are one or the other (`ROOMS_IN_WORDS`). */
export const ROOM_NAMES = [
  'box',
  'box-turn',
  'box-kind',
  'pitman-arm',
  'steering-arm',
  'tie-rod',
  'lateral',
  'shaft',
  'stops',
] as const;

export type RoomName = (typeof ROOM_NAMES)[number];

/** From and to: mm, degrees, a ratio to 1, a number of joints. */
export type Room = readonly [from: number, to: number];
export type FigureRooms = Readonly<Partial<Record<RoomName, Room>>>;
export type Rooms = FigureRooms & WordedRooms;

interface RoomKind {
  readonly unit: 'length' | 'degrees' | 'ratio' | 'joints';
  /** Beyond these no figure is meant. */
  readonly least: number;
  readonly most: number;
  /** What the figures are of: "how far behind the axle". */
  readonly of: string;
  /** The room in a sentence, its figures put in. */
  words(range: string): string;
}

const arm = (least: number): RoomKind => ({
  unit: 'length',
  least,
  most: 400,
  of: 'how long the arm is',
  words: (range) => `on an arm ${range} long`,
});

const KINDS: Readonly<Record<RoomName, RoomKind>> = {
  box: {
    unit: 'length',
    least: -1500,
    most: 3000,
    of: 'how far behind the axle, ahead of it below 0',
    words: (range) => `its middle ${range} behind the axle`,
  },
  'box-turn': {
    unit: 'degrees',
    // As far as a plate or bracket is made for it: `TURNED`.
    least: -10,
    most: 10,
    of: 'how far a side steer box is turned in plan, the end that its shaft goes into toward the middle of the car above 0',
    words: (range) => `turned ${range} in plan in side steer; in cross steer leaning back as is usual`,
  },
  'box-kind': {
    unit: 'ratio',
    least: 4,
    most: 40,
    of: 'its ratio',
    words: (range) => `of a ratio of ${range} to 1`,
  },
  'pitman-arm': arm(50),
  'steering-arm': arm(50),
  'tie-rod': { ...arm(50), words: (range) => `on arms ${range} long` },
  lateral: {
    unit: 'length',
    least: 0,
    most: 400,
    of: 'how far the bar runs from the axle',
    words: (range) => `its bar ${range} from the middle of the axle`,
  },
  shaft: {
    unit: 'joints',
    least: 1,
    most: 3,
    of: 'how many joints',
    words: (range) => `with ${range} joints`,
  },
  stops: {
    unit: 'degrees',
    least: 10,
    most: 60,
    of: 'how far the inner wheel turns',
    words: (range) => `so that the inner wheel turns ${range}`,
  },
};

/** What a room in figures is given to. */
const OF: Readonly<Record<RoomName, string>> = {
  box: 'the steering box',
  'box-turn': 'the steering box',
  'box-kind': 'a steering box',
  'pitman-arm': 'the pitman ball',
  'steering-arm': 'the steering arm’s ball',
  'tie-rod': 'the tie rod’s balls',
  lateral: 'what holds the axle sideways',
  shaft: 'a steering shaft',
  stops: 'the axle’s stops',
};

export const isRoomName = (name: string): name is RoomName => ROOM_NAMES.some((each) => each === name);

/** What the figures of a room are of: "how long the arm is". */
export const roomIsOf = (name: RoomName): string => KINDS[name].of;

function figure({ unit }: RoomKind, value: number, style: LengthStyle): string {
  if (unit === 'length') return lengthBeside(value, [], style);
  if (unit === 'degrees') return formatDegrees(value, Number.isInteger(value) ? 0 : 1);
  return String(Number(value.toFixed(1)));
}

/** "5 in to 7 in". */
export function roomFigures(name: RoomName, [from, to]: Room, style: LengthStyle): string {
  const [least, most] = [figure(KINDS[name], from, style), figure(KINDS[name], to, style)];
  return least === most ? least : `${least} to ${most}`;
}

/** "on an arm 5 in to 7 in long". */
export function givenRoomWords(name: RoomName, room: Room, style: LengthStyle): string {
  const words = KINDS[name].words(roomFigures(name, room, style));
  return name === 'shaft' && room[1] === 1 ? words.replace(/joints$/, 'joint') : words;
}

/** A room that is given, with what it is of: "the pitman ball on an arm 5 in to 6 in long"; undefined where none is. */
export function givenRoom(
  rooms: Rooms,
  name: RoomName | WordedRoomName,
  style: LengthStyle,
): string | undefined {
  if (isWordedRoomName(name)) {
    const ways = rooms[name];
    return ways && wordedRoomWords(name, ways);
  }
  const room = rooms[name];
  return room && `${OF[name]} ${givenRoomWords(name, room, style)}`;
}

const BETWEEN = /\s*(?:\.\.+|:|–|\bto\b)\s*/;
const UNIT_AT_END = /[a-z"'”’°]+\s*$/i;

function oneFigure({ unit }: RoomKind, text: string, inUnit: LengthUnit): Outcome<number, string> {
  if (unit === 'length') return parseLength(text, inUnit);
  if (unit === 'degrees') return parseAngle(text);
  const wanted = unit === 'joints' ? /^\d+$/ : /^\d+(?:\.\d+)?$/;
  return wanted.test(text.trim())
    ? succeeded(Number(text))
    : failed(
        `${quoted(text)} is no ${unit === 'joints' ? 'number of joints; write for example 2' : 'ratio; write for example 16'}`,
      );
}

/**
 * Reads a room as a person types it: `5 to 7 in`, `5..7in`, `28 to 32`, `120:180`, or one figure alone for just that. A unit
 * behind the second figure is the first one's too; a length without one is in `unit`.
 * Outcomes: the room, mm, degrees or as counted; or why not in one line.
 */
export function readRoom(name: RoomName, text: string, style: LengthStyle): Outcome<Room, string> {
  const kind = KINDS[name];
  const parts = text.trim().split(BETWEEN);
  const [first = '', second = first] = parts;
  if (parts.length > 2 || first.trim() === '' || second.trim() === '')
    return failed(`two figures are expected, from and to, found ${quoted(text)}`);
  const unit = kind.unit === 'length' ? (UNIT_AT_END.exec(second)?.[0] ?? '') : '';
  const from = oneFigure(kind, UNIT_AT_END.test(first) ? first : `${first}${unit}`, style.unit);
  if (!from.ok) return from;
  const to = oneFigure(kind, second, style.unit);
  if (!to.ok) return to;
  const room: Room = [from.value, to.value];
  const as = (value: number) => figure(kind, value, style);
  if (room[0] > room[1])
    return failed(`the range runs backwards: ${as(room[0])} is more than ${as(room[1])}`);
  if (room[0] < kind.least || room[1] > kind.most)
    return failed(`${kind.of}: from ${as(kind.least)} to ${as(kind.most)} can be asked for`);
  return succeeded(room);
}

/** Whether a figure lies in a room; where none is given all do. */
export const isInRoom = (rooms: Rooms, name: RoomName, value: number): boolean => {
  const room = rooms[name];
  return !room || (value >= room[0] - 0.05 && value <= room[1] + 0.05);
};

/** Whether box and lateral bar of a laid layout are where they may be. */
export function isPlacedInRooms(rooms: Rooms, { steering, lateral, axle }: Layout): boolean {
  const middle = (axle.left.wheelCentre[0] + axle.right.wheelCentre[0]) / 2;
  const off = lateral.kind === 'bar' ? Math.abs(lateral.axle[0] - middle) : undefined;
  return (
    isInRoom(rooms, 'box', middle - steering.box.sectorCentre[0]) &&
    (off === undefined || isInRoom(rooms, 'lateral', off))
  );
}

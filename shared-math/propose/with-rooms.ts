import { clamp } from '../clamp.ts';
import { toRadians } from '../units/index.ts';
import type { Car } from './car.ts';
import type { Choice, Idea } from './idea.ts';
import { isPlacedInRooms, type Room, type RoomName, type Rooms } from './rooms.ts';
import { isOpenTo } from './rooms-in-words.ts';
import { ARM } from './sizes.ts';
import { type Arm, armLength } from './usual-arms.ts';

const ARMS: readonly (readonly [RoomName, Arm])[] = [
  ['pitman-arm', 'pitman'],
  ['steering-arm', 'steering'],
  ['tie-rod', 'tieRod'],
];

/** What of a choice is left by the rooms; undefined if nothing is. What stands still stands. */
function narrowed(rooms: Rooms, { arms }: Idea, choice: Choice, at: number): Choice | undefined {
  if (choice.from === choice.to) return choice;
  const as = (room: Room | undefined): Choice =>
    room ? { ...choice, from: room[0], to: room[1], sharp: true } : choice;
  for (const [name, arm] of ARMS) if (arms[arm] === at) return as(rooms[name]);
  if (choice.words === 'the stops') return as(rooms.stops);
  // The ball is no farther from the box than the longest arm.
  if (choice.words === 'the pitman ball along the car' && rooms.box) {
    const reach = rooms['pitman-arm']?.[1] ?? ARM.most;
    const from = Math.max(choice.from, -rooms.box[1] - reach);
    const to = Math.min(choice.to, -rooms.box[0] + reach);
    return from <= to ? { ...choice, from, to } : undefined;
  }
  return choice;
}

/** An idea whose box is turned no further than its room leaves: nearest to square, and from there toward the column. */
function turnedWithin(room: Room | undefined, idea: Idea): Idea {
  const { turn, choices } = idea;
  if (!room || !turn) return idea;
  const [from, to] = room.map(toRadians) as [number, number];
  const square = clamp(0, from, to);
  const still = { ...(choices[turn.choice] as Choice), from: square, to: square };
  return {
    ...idea,
    choices: choices.with(turn.choice, still),
    turn: { ...turn, most: clamp(turn.most, from, to) },
  };
}

/** Times that an arm's number is put right for the length that comes of it. */
const PUT_RIGHT = 3;

/**
 * An idea with no more open than the rooms that were given leave; an empty list if they leave none of its usual places. The
 * number of an arm with a room is the length that a rule reads on it, however the kingpin leans.
 */
export function withRooms({ rooms }: Car, asUsual: Idea): Idea[] {
  if (Object.keys(rooms).length === 0) return [asUsual];
  if (!isOpenTo(rooms, asUsual)) return [];
  const idea = turnedWithin(rooms['box-turn'], asUsual);
  const choices = idea.choices.flatMap((choice, at) => narrowed(rooms, idea, choice, at) ?? []);
  if (choices.length < idea.choices.length) return [];
  const arms = ARMS.flatMap(([name, arm]) => {
    const at = idea.arms[arm];
    return rooms[name] && at !== undefined && choices[at]?.sharp ? [{ arm, at }] : [];
  });
  const lay: Idea['lay'] = (x) => {
    let numbers = x;
    let laid = idea.lay(x);
    for (let time = 0; time < PUT_RIGHT && arms.length > 0 && laid; time += 1) {
      for (const { arm, at } of arms)
        numbers = numbers.with(at, (numbers[at] as number) + (x[at] as number) - armLength(laid, arm));
      laid = idea.lay(numbers);
    }
    return laid && isPlacedInRooms(rooms, laid) ? laid : undefined;
  };
  const starts = idea
    .starts()
    .map((start) =>
      start.map((value, at) => {
        const { from, to } = choices[at] as Choice;
        return value < from || value > to ? (from + to) / 2 : value;
      }),
    )
    .filter((start) => lay(start) !== undefined);
  return starts.length > 0 ? [{ ...idea, choices, lay, starts: () => starts }] : [];
}

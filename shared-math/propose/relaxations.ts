import { LIMITS, type LimitName } from '../findings/index.ts';
import type { LayoutDocument, Obstacle } from '../layout/index.ts';
import { formatDegrees, formatForce, lengthBeside, MM_PER_INCH, setLength } from '../units/index.ts';
import { carOf, limitOf } from './car.ts';
import type { HoldName, ProposeQuestion } from './question.ts';
import { givenRoomWords, ROOM_NAMES, type RoomName } from './rooms.ts';

/** One step of a relaxation: the question with it, and how far that is in words. */
export interface Relaxed {
  readonly question: ProposeQuestion;
  /** "the sump 1 1/2 in higher". */
  readonly words: string;
}

/** A limit, an obstacle or something held, and what it would be with less of it, from a little to all. */
export interface Relaxation {
  readonly key: string;
  /** Whether it changes the car, lets something of the steering go, or lets more pass than the shop does. */
  readonly gives: 'car' | 'held' | 'limit';
  /** As it stands: "the sump where it is". */
  readonly stands: string;
  readonly steps: readonly Relaxed[];
}

/** mm that an obstacle is moved by, in steps that a builder thinks in. */
const MOVES = [0.5, 1, 1.5, 2, 3, 4, 6].map((inches) => inches * MM_PER_INCH);
/** Shares of the bump travel that are left. */
const BUMPS = [0.85, 0.7, 0.55, 0.4];

/** The limits that can keep a steering out, and what is let pass of them, as factors of the figure. */
const FACTORS: readonly (readonly [LimitName, readonly number[]])[] = [
  ['bumpSteerWorst', [1.5, 2, 3]],
  ['lockLeast', [0.9, 0.8, 0.7]],
  ['clearanceMoving', [0.75, 0.5, 0.25]],
  ['clearanceTyre', [0.75, 0.5, 0.25]],
  ['ballTilt', [1.2, 1.4]],
  ['rimForce', [1.5, 2]],
  ['ratioMost', [1.2, 1.4]],
  ['jointSingle', [1.15, 1.3]],
];

function moved(obstacle: Obstacle, along: 0 | 2, by: number): Obstacle {
  const shift = <P extends readonly [number, number, number]>(point: P): P =>
    point.map((value, i) => (i === along ? value + by : value)) as unknown as P;
  return obstacle.kind === 'box'
    ? { ...obstacle, centre: shift(obstacle.centre) }
    : { ...obstacle, from: shift(obstacle.from), to: shift(obstacle.to) };
}

const lower = (name: string) =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

/** An obstacle moved: a radiator ahead, all else up; at last without it. */
function ofObstacle(question: ProposeQuestion, index: number): Relaxation {
  const { document, style } = question;
  const obstacle = document.obstacles[index] as Obstacle;
  const name = lower(obstacle.name);
  const ahead = obstacle.role === 'radiator';
  const withOther = (other: Obstacle | undefined): LayoutDocument => ({
    ...document,
    obstacles: document.obstacles.flatMap((entry, i) => (i === index ? (other ? [other] : []) : [entry])),
  });
  return {
    key: `obstacle ${index}`,
    gives: 'car',
    stands: `the ${name} where it is`,
    steps: [
      ...MOVES.map((by) => ({
        question: { ...question, document: withOther(moved(obstacle, ahead ? 0 : 2, by)) },
        words: `the ${name} ${lengthBeside(by, [], style)} ${ahead ? 'further ahead' : 'higher'}`,
      })),
      { question: { ...question, document: withOther(undefined) }, words: `no ${name} there` },
    ],
  };
}

function ofBump(question: ProposeQuestion): Relaxation {
  const { document, style } = question;
  const { travel } = document;
  const quarter = MM_PER_INCH / 4;
  return {
    key: 'bump',
    gives: 'car',
    stands: `a bump travel of ${lengthBeside(travel.bump, [], style)}`,
    steps: BUMPS.map((share) => {
      const bump = Math.max(quarter, Math.round((share * travel.bump) / quarter) * quarter);
      return {
        question: { ...question, document: { ...document, travel: { ...travel, bump } } },
        words: `a bump travel of ${lengthBeside(bump, [travel.bump], style)}`,
      };
    }),
  };
}

function limitText(question: ProposeQuestion, name: LimitName, value: number): string {
  const { unit } = LIMITS[name];
  if (unit === 'degrees') return formatDegrees(value, Number.isInteger(value) ? 0 : 2);
  if (unit === 'length') return setLength(value, question.style);
  if (unit === 'force') return formatForce(value, question.style.unit);
  return String(Number(value.toFixed(1)));
}

function ofLimit(question: ProposeQuestion, name: LimitName, factors: readonly number[]): Relaxation {
  const value = limitOf(carOf(question), name);
  const words = LIMITS[name].words.charAt(0).toLowerCase() + LIMITS[name].words.slice(1);
  const [least, most] = LIMITS[name].range;
  return {
    key: `limit ${name}`,
    gives: 'limit',
    stands: `${words} ${limitText(question, name, value)}`,
    steps: factors.map((factor) => {
      const to = Math.min(most, Math.max(least, Number((value * factor).toFixed(3))));
      return {
        question: { ...question, limits: { ...question.limits, [name]: to } },
        words: `${words} ${limitText(question, name, to)}`,
      };
    }),
  };
}

/** What is held as it stands, and let go. */
const LET_GO: Readonly<Record<HoldName, readonly [stands: string, goes: string]>> = {
  way: ['side or cross steer as it is', 'the other way of steering'],
  box: ['the steering box where it is', 'the steering box bolted elsewhere'],
  mount: ['the box on that part of the frame', 'the box on another part of the frame'],
  'axle-side': ['the box on that side of the axle', 'the box on the other side of the axle'],
  'arm-way': ['the pitman arm pointing as it does', 'the pitman arm the other way up'],
  'box-turn': ['the box turned as it is', 'the box turned otherwise'],
  'box-kind': ['the steering box that it has', 'another steering box'],
  'pitman-arm': ['the pitman ball where it is', 'the pitman ball elsewhere'],
  'steering-arm': ['the steering arm’s ball where it is', 'the steering arm’s ball elsewhere'],
  'tie-rod': ['the tie rod where it is', 'the tie rod elsewhere'],
  lateral: ['what holds the axle sideways as it is', 'a lateral bar laid with the steering'],
  shaft: ['the steering shaft where it is', 'another steering shaft'],
  stops: ['the axle’s stops as they are', 'the axle’s stops set otherwise'],
};

const ROOM_OF: Readonly<Record<RoomName, string>> = {
  box: 'the steering box',
  'box-kind': 'a steering box',
  'pitman-arm': 'the pitman ball',
  'steering-arm': 'the steering arm’s ball',
  'tie-rod': 'the tie rod’s balls',
  lateral: 'what holds the axle sideways',
  shaft: 'a steering shaft',
  stops: 'the axle’s stops',
};

/** A room that was given, let go. */
function ofRoom(question: ProposeQuestion, name: RoomName): Relaxation[] {
  const { rooms = {}, style } = question;
  const room = rooms[name];
  if (!room) return [];
  const { [name]: _, ...others } = rooms;
  const given = `${ROOM_OF[name]} ${givenRoomWords(name, room, style)}`;
  return [
    {
      key: `room ${name}`,
      gives: 'held',
      stands: given,
      steps: [{ question: { ...question, rooms: others }, words: `more room than ${given}` }],
    },
  ];
}

/** The key of the one relaxation that lets go two things held. */
export const BOX_AND_BALL = 'held box and pitman-arm';

/** The pitman ball hangs from the box, so that neither goes far alone: both let go at once, where both are held. */
function ofBoxAndBall(question: ProposeQuestion, names: readonly HoldName[]): Relaxation[] {
  const both: readonly HoldName[] = ['box', 'pitman-arm'];
  if (!both.every((name) => names.includes(name))) return [];
  return [
    {
      key: BOX_AND_BALL,
      gives: 'held',
      stands: 'the steering box and its pitman ball where they are',
      steps: [
        {
          question: { ...question, held: names.filter((name) => !both.includes(name)) },
          words: 'the steering box and its pitman ball elsewhere',
        },
      ],
    },
  ];
}

/** Everything of a question that could be otherwise: obstacles, travel, what is held, limits; what a builder can change first. */
export function relaxationsOf(question: ProposeQuestion): Relaxation[] {
  const { held } = carOf(question);
  const names = [...held];
  return [
    ...question.document.obstacles.map((_, i) => ofObstacle(question, i)),
    ofBump(question),
    ...names.map(
      (name): Relaxation => ({
        key: `held ${name}`,
        gives: 'held',
        stands: LET_GO[name][0],
        steps: [
          {
            question: { ...question, held: names.filter((other) => other !== name) },
            words: LET_GO[name][1],
          },
        ],
      }),
    ),
    ...ofBoxAndBall(question, names),
    ...ROOM_NAMES.flatMap((name) => ofRoom(question, name)),
    ...FACTORS.map(([name, factors]) => ofLimit(question, name, factors)),
  ];
}

/** Two relaxed questions in one: what the second changed of the asked one is changed in the first. */
export function bothRelaxed(asked: ProposeQuestion, one: Relaxed, other: Relaxed): Relaxed {
  const pick = <Value>(original: Value, a: Value, b: Value): Value => (b === original ? a : b);
  const [a, b] = [one.question, other.question];
  const obstacles = asked.document.obstacles.flatMap((obstacle, i) => {
    const find = (question: ProposeQuestion) =>
      question.document.obstacles.find(({ name }) => name === obstacle.name);
    const [inA, inB] = [find(a), find(b)];
    if (!inA || !inB) return [];
    return [pick(obstacle, inA, inB === asked.document.obstacles[i] ? obstacle : inB)];
  });
  const roomsOf = ({ rooms = {} }: ProposeQuestion) => rooms;
  const heldOf = ({ held }: ProposeQuestion) => held;
  return {
    question: {
      ...asked,
      document: {
        ...asked.document,
        travel: pick(asked.document.travel, a.document.travel, b.document.travel),
        obstacles,
      },
      ...(heldOf(a) || heldOf(b)
        ? {
            held: (heldOf(a) ?? (heldOf(b) as readonly HoldName[])).filter(
              (name) => !heldOf(b) || (heldOf(b) as readonly HoldName[]).includes(name),
            ),
          }
        : {}),
      rooms: Object.fromEntries(Object.entries(roomsOf(a)).filter(([name]) => name in roomsOf(b))),
      limits: { ...asked.limits, ...a.limits, ...b.limits },
    },
    words: `${one.words} and ${other.words}`,
  };
}

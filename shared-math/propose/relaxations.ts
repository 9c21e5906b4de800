import { LIMITS, type LimitName } from '../findings/index.ts';
import type { Obstacle } from '../layout/index.ts';
import { formatDegrees, formatForce, lengthBeside, MM_PER_INCH, setLength } from '../units/index.ts';
import { carOf, limitOf } from './car.ts';
import { HOLDS, type HoldName, type ProposeQuestion } from './question.ts';
import { givenRoom } from './rooms.ts';
import { isWordedRoomName } from './rooms-in-words.ts';

/** One step of a relaxation: the question with it, and how far that is in words. */
export interface Relaxed {
  readonly question: ProposeQuestion;
  /** "the sump 1 1/2 in higher". */
  readonly words: string;
}

/** A limit, an obstacle or something held, and what it would be with less of it. */
export interface Relaxation {
  readonly key: string;
  /** Whether it changes the car, lets something of the steering go, or lets more pass than the shop does. */
  readonly gives: 'car' | 'held' | 'limit';
  /** As it stands: "the sump where it is". */
  readonly stands: string;
  /** Taken away as far as it goes: where that frees nothing, no less of it does. */
  readonly most: Relaxed;
  /** Ways to change it that a builder has, each from a little to much; of all the same step is alike much. */
  readonly ladders: readonly (readonly Relaxed[])[];
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

type Way = 'higher' | 'further out' | 'further ahead' | 'further back';

/** An obstacle moved by so many mm; one of a pair takes the other along. */
function moved(obstacle: Obstacle, way: Way, by: number): Obstacle {
  const middle = obstacle.kind === 'box' ? obstacle.centre[1] : (obstacle.from[1] + obstacle.to[1]) / 2;
  const aside = middle < 0 ? -by : by;
  const step = {
    higher: [0, 0, by],
    'further out': [0, aside, 0],
    'further ahead': [by, 0, 0],
    'further back': [-by, 0, 0],
  }[way];
  const shift = <P extends readonly [number, number, number]>(point: P): P =>
    point.map((value, i) => value + (step[i] as number)) as unknown as P;
  return obstacle.kind === 'box'
    ? { ...obstacle, centre: shift(obstacle.centre) }
    : { ...obstacle, from: shift(obstacle.from), to: shift(obstacle.to) };
}

/** mm off the middle of the car from which something stands on a side of it. */
const ASIDE = 60;

/** The ways in which a builder can move an obstacle: a radiator ahead, what stands on a side outward as well. */
function waysOf(obstacle: Obstacle): readonly Way[] {
  if (obstacle.role === 'radiator') return ['further ahead'];
  const middle = obstacle.kind === 'box' ? obstacle.centre[1] : (obstacle.from[1] + obstacle.to[1]) / 2;
  return [
    'higher',
    ...(Math.abs(middle) > ASIDE ? (['further out'] as const) : []),
    'further ahead',
    'further back',
  ];
}

const lower = (name: string) =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

/** Obstacles moved together under one name, or as at the last step taken out. */
function ofObstacles(
  question: ProposeQuestion,
  name: string,
  concerned: (obstacle: Obstacle) => boolean,
  ways: readonly Way[],
): Relaxation {
  const { document, style } = question;
  const withOthers = (other: (obstacle: Obstacle) => readonly Obstacle[]): ProposeQuestion => ({
    ...question,
    document: {
      ...document,
      obstacles: document.obstacles.flatMap((entry) => (concerned(entry) ? other(entry) : [entry])),
    },
  });
  return {
    key: `obstacle ${name}`,
    gives: 'car',
    stands: `the ${name} where it is`,
    most: { question: withOthers(() => []), words: `the ${name} out of the way` },
    ladders: ways.map((way) =>
      MOVES.map((by) => ({
        question: withOthers((entry) => [moved(entry, way, by)]),
        words: `the ${name} ${lengthBeside(by, [], style)} ${way}`,
      })),
    ),
  };
}

/** Each obstacle by itself, and the engine with what is bolted to it. */
function ofAllObstacles(question: ProposeQuestion): Relaxation[] {
  const { obstacles } = question.document;
  const onEngine = ({ role }: Obstacle) => role === 'engine' || role === 'sump' || role === 'header';
  const alone = obstacles
    .filter(({ role }) => role !== 'engine')
    .map((obstacle) =>
      ofObstacles(question, lower(obstacle.name), (entry) => entry === obstacle, waysOf(obstacle)),
    );
  const engine = obstacles.some(({ role }) => role === 'engine')
    ? [ofObstacles(question, 'engine', onEngine, ['higher', 'further back'])]
    : [];
  return [...alone, ...engine];
}

/** What has one way to be changed: its last step is as far as it goes. */
const oneLadder = (steps: readonly Relaxed[]): Pick<Relaxation, 'most' | 'ladders'> => ({
  most: steps.at(-1) as Relaxed,
  ladders: [steps],
});

function ofBump(question: ProposeQuestion): Relaxation {
  const { document, style } = question;
  const { travel } = document;
  const quarter = MM_PER_INCH / 4;
  return {
    key: 'bump',
    gives: 'car',
    stands: `a bump travel of ${lengthBeside(travel.bump, [], style)}`,
    ...oneLadder(
      BUMPS.map((share) => {
        const bump = Math.max(quarter, Math.round((share * travel.bump) / quarter) * quarter);
        return {
          question: { ...question, document: { ...document, travel: { ...travel, bump } } },
          words: `a bump travel of ${lengthBeside(bump, [travel.bump], style)}`,
        };
      }),
    ),
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
    ...oneLadder(
      factors.map((factor) => {
        const to = Math.min(most, Math.max(least, Number((value * factor).toFixed(3))));
        return {
          question: { ...question, limits: { ...question.limits, [name]: to } },
          words: `${words} ${limitText(question, name, to)}`,
        };
      }),
    ),
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

/** A room that was given, let go. */
function ofRoom(question: ProposeQuestion, name: HoldName): Relaxation[] {
  const { rooms = {}, style } = question;
  const given = givenRoom(rooms, name, style);
  if (given === undefined) return [];
  const { [name]: _, ...others } = rooms;
  return [
    {
      key: `room ${name}`,
      gives: 'held',
      stands: given,
      ...oneLadder([
        {
          question: { ...question, rooms: others },
          words: isWordedRoomName(name) ? LET_GO[name][1] : `more room than ${given}`,
        },
      ]),
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
      ...oneLadder([
        {
          question: { ...question, held: names.filter((name) => !both.includes(name)) },
          words: 'the steering box and its pitman ball elsewhere',
        },
      ]),
    },
  ];
}

/** Everything of a question that could be otherwise: obstacles, travel, what is held, limits; what a builder can change first. */
export function relaxationsOf(question: ProposeQuestion): Relaxation[] {
  const { held } = carOf(question);
  const names = [...held];
  return [
    ...ofAllObstacles(question),
    ofBump(question),
    ...names.map(
      (name): Relaxation => ({
        key: `held ${name}`,
        gives: 'held',
        stands: LET_GO[name][0],
        ...oneLadder([
          {
            question: { ...question, held: names.filter((other) => other !== name) },
            words: LET_GO[name][1],
          },
        ]),
      }),
    ),
    ...ofBoxAndBall(question, names),
    ...HOLDS.flatMap((name) => ofRoom(question, name)),
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

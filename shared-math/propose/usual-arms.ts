import { capitalised } from '../capitalised.ts';
import type { Point } from '../geometry/points.ts';
import { cross, norm, subtract, unit } from '../geometry/vectors.ts';
import type { Layout } from '../layout/index.ts';
import { lengthBeside, MM_PER_INCH } from '../units/index.ts';
import type { Car } from './car.ts';
import type { ArmChoices, Idea } from './idea.ts';

// A search ends at arms of any length; those that are bought, or marked out with a rule, come in whole steps. So much of
// a step one way or the other hardly costs anything, as the pitman ball stays where it is and the steering arm's ball
// has its zero-slope line worked out anew.

/** mm: an eighth of an inch, or half a centimetre where the reader measures in millimetres. */
const STEP = { in: MM_PER_INCH / 8, mm: 5 } as const;
/** mm: an arm of the shelf so near to what was found is taken as it is. */
const OF_THE_SHELF = MM_PER_INCH / 8;
/** mm that nobody reads off a rule: 1/64 in. */
const SAME = MM_PER_INCH / 64;

export type Arm = keyof ArmChoices;
const NAMES: Readonly<Record<Arm, string>> = {
  pitman: 'pitman arm',
  steering: 'steering arm',
  tieRod: 'tie rod arms',
};
const ARMS: readonly Arm[] = ['pitman', 'steering', 'tieRod'];
/** As the shelf's parts are called. */
const ON_SHELF = { pitman: 'pitman', steering: 'steering', tieRod: 'steering' } as const;

const fromLine = (point: Point, on: Point, along: Point): number =>
  norm(cross(subtract(point, on), unit(along)));

/** mm from the ball square to the axis that an arm swings about: what a rule laid along the arm reads. */
export function armLength({ axle, steering }: Layout, arm: Arm): number {
  const { box, dragLinkBall, dragLinkTo } = steering;
  if (arm === 'pitman') return fromLine(box.pitmanBall, box.sectorCentre, box.sectorAxis);
  const { kingpinTop, kingpinBottom, tieRodBall } = axle[arm === 'tieRod' ? 'left' : dragLinkTo];
  const ball = arm === 'tieRod' ? tieRodBall : dragLinkBall;
  return fromLine(ball, kingpinBottom, subtract(kingpinTop, kingpinBottom));
}

/** The arms whose length an idea leaves open. */
const openArms = ({ arms, choices }: Idea): Arm[] =>
  ARMS.filter((arm) => {
    const choice = choices[arms[arm] ?? -1];
    return choice !== undefined && choice.to > choice.from;
  });

/** mm: the arms of a kind that lie on the shelf. */
const shelvedArms = ({ shelf }: Car, arm: Arm): number[] =>
  shelf.flatMap(({ part }) =>
    part.kind === 'arm' && part.arm === ON_SHELF[arm] && part.count > 0 ? [part.length] : [],
  );

/** Usual lengths beside one that was found, the nearest first: of the shelf, then two whole steps either way. */
function usualBeside(car: Car, arm: Arm, length: number): number[] {
  const step = STEP[car.style.unit];
  const own = shelvedArms(car, arm).filter((other) => Math.abs(other - length) < OF_THE_SHELF);
  const near = (a: number, b: number) => Math.abs(a - length) - Math.abs(b - length);
  const below = Math.floor(length / step) * step;
  return [...own.sort(near), ...[-1, 0, 1, 2].map((steps) => below + steps * step).sort(near)];
}

/** The numbers with an arm of just that length; undefined where its choice does not go so far, or nothing can be laid. */
function withArm(
  car: Car,
  idea: Idea,
  x: readonly number[],
  arm: Arm,
  length: number,
): readonly number[] | undefined {
  const at = idea.arms[arm] as number;
  const { from, to, sharp } = idea.choices[at] as Idea['choices'][number];
  const step = sharp ? 1e-6 : STEP[car.style.unit];
  let numbers = x;
  // A kingpin leans by little: the length follows the number all but one to one, and three steps bring it there.
  for (let time = 0; time < 3; time += 1) {
    const layout = idea.lay(numbers);
    if (!layout) return undefined;
    const next = (numbers[at] as number) + length - armLength(layout, arm);
    // How long arms are usually made is no sharp bound: a step beyond it is let pass.
    if (next < from - step || next > to + step) return undefined;
    numbers = numbers.with(at, next);
  }
  return numbers;
}

/**
 * The numbers of a place with each arm that may be chosen at a usual length, where `isGood` has nothing against it; of
 * several the nearest to what was found. All arms, else some of them, else the place as it was found.
 * x: the numbers of the idea's choices, mm and rad.
 */
export function withUsualArms(
  car: Car,
  idea: Idea,
  x: readonly number[],
  isGood: (x: readonly number[]) => boolean,
): readonly number[] {
  let numbers = x;
  for (const arm of openArms(idea)) {
    const layout = idea.lay(numbers);
    if (!layout) return numbers;
    const found = usualBeside(car, arm, armLength(layout, arm))
      .map((length) => withArm(car, idea, numbers, arm, length))
      .find((at) => at !== undefined && isGood(at));
    if (found) numbers = found;
  }
  return numbers;
}

/** What is to be said of the arms' lengths: in favour where all are usual, against where one had to be an odd one. */
export interface ArmWords {
  readonly good: readonly string[];
  readonly costs: readonly string[];
}

/** In words, for what was chosen: an arm that is held is not spoken of. */
export function armWords(car: Car, idea: Idea, layout: Layout): ArmWords {
  const step = STEP[car.style.unit];
  const arms = openArms(idea).map((arm) => {
    const length = armLength(layout, arm);
    const whole = Math.round(length / step) * step;
    const isUsual = [whole, ...shelvedArms(car, arm)].some((usual) => Math.abs(length - usual) < SAME);
    return { words: `${NAMES[arm]} ${lengthBeside(length, isUsual ? [] : [whole], car.style)}`, isUsual };
  });
  const said = (isUsual: boolean) =>
    arms
      .filter((each) => each.isUsual === isUsual)
      .map(({ words }) => words)
      .join(', ');
  const isGood = arms.length > 0 && arms.every(({ isUsual }) => isUsual);
  return {
    good: isGood ? [`${capitalised(said(true))} to the ball: usual lengths.`] : [],
    costs: said(false)
      ? [`${capitalised(said(false))} to the ball: the usual lengths beside it do not suit.`]
      : [],
  };
}

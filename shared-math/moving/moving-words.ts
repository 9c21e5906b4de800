import { capitalised } from '../capitalised.ts';
import { steerWay, wheelWords } from '../findings/index.ts';
import { toeLength, wheelPlaces } from '../sweep/index.ts';
import {
  formatDegrees,
  formatLength,
  formatToeLength,
  type LengthStyle,
  type Radians,
  toDegrees,
} from '../units/index.ts';
import { FAILURE_WORDS, handwheelWords } from '../words/index.ts';
import type { HandPose, MovedCar } from './moved-car.ts';

// What a car does in a pose, as one says it to the person who drives it.

/** Degrees below which the wheels are said to stay where they are pointed: half of what two decimals show. */
const STAYS = 0.005;

/** "2 in up", "1 1/2 in down", "at ride height". */
export function bumpWords(heave: number, style: LengthStyle): string {
  const size = formatLength(Math.abs(heave), style);
  if (size === formatLength(0, style)) return 'at ride height';
  return `${size} ${heave > 0 ? 'up' : 'down'}`;
}

/** "1.5°, left wheel up", "level". */
export function rollWords(roll: Radians): string {
  const size = formatDegrees(Math.abs(toDegrees(roll)), 1);
  if (size === formatDegrees(0, 1)) return 'level';
  return `${size}, ${roll > 0 ? 'left' : 'right'} wheel up`;
}

/** "straight ahead", "90° to the left". */
export function steeringWords(handwheel: Radians): string {
  const degrees = toDegrees(handwheel);
  if (Math.abs(degrees) < 0.5) return 'straight ahead';
  return `${formatDegrees(Math.abs(degrees), 0)} to the ${degrees > 0 ? 'left' : 'right'}`;
}

const AROUND = [
  'ahead',
  'ahead and left',
  'its left',
  'behind and left',
  'behind',
  'behind and right',
  'its right',
  'ahead and right',
] as const;

/** From where the car is looked at, by the angle in plan from ahead toward its left: "ahead and left". */
export function seenWords(azimuth: Radians): string {
  const eighth = Math.round(toDegrees(azimuth) / 45);
  return AROUND[((eighth % 8) + 8) % 8] as string;
}

/** "1.31° to the right"; undefined if it shows as none. */
export function steerWords(steer: Radians): string | undefined {
  const degrees = toDegrees(steer);
  if (Math.abs(degrees) < STAYS) return undefined;
  return `${formatDegrees(Math.abs(degrees), 2)} ${steerWay(steer)}`;
}

/** What the wheels do by themselves, as the end of a sentence without its full stop. */
export function byThemselves(steer: Radians): string {
  const words = steerWords(steer);
  return words === undefined
    ? 'the wheels stay where they are pointed'
    : `the wheels steer themselves ${words}`;
}

/** How far the front of a tyre then goes aside against its rear: "0.612 in"; undefined if the wheels stay. */
export function atTyreWords(steer: Radians, tyreRadius: number, style: LengthStyle): string | undefined {
  if (steerWords(steer) === undefined) return undefined;
  return formatToeLength(toeLength(Math.abs(steer), tyreRadius), style.unit);
}

/** Whether the handwheel is held turned, as far as words tell. */
export const isTurned = ({ handwheel }: HandPose) => Math.abs(toDegrees(handwheel)) >= 0.5;

/** Where both wheels point, left before right: "12.3° and 10.1° to the left", "0.4° to the left and 0.2° to the right". */
export function anglesWords({ wheels: { asked, byItself } }: MovedCar): string {
  const steers = [asked.left + byItself.left, asked.right + byItself.right] as const;
  const [left, right] = steers.map((steer) => formatDegrees(Math.abs(toDegrees(steer)), 1)) as [
    string,
    string,
  ];
  const ways = steers.map(steerWay) as [string, string];
  return ways[0] === ways[1]
    ? `${left} and ${right} ${ways[1]}`
    : `${left} ${ways[0]} and ${right} ${ways[1]}`;
}

/** Where the wheels stand: "Both wheels 2 in up", and where the handwheel is held if it is turned. */
export function standingWords(car: MovedCar, pose: HandPose, style: LengthStyle): string {
  const { left, right } = wheelPlaces(car.layout, pose);
  const wheels =
    bumpWords(left, style) === 'at ride height' && bumpWords(right, style) === 'at ride height'
      ? 'at ride height'
      : wheelWords(car.layout, pose, (mm) => formatLength(mm, style));
  const held = isTurned(pose) ? `, ${handwheelWords(toDegrees(pose.handwheel))}` : '';
  return capitalised(`${wheels}${held}`);
}

/** Whether the car stands up, down or rolled, so that its wheels can steer by themselves. */
export const isMoved = ({ heave, roll }: HandPose) => heave !== 0 || roll !== 0;

/**
 * What the car does in its pose, in one sentence: "Both wheels 2 in up: the wheels steer themselves 1.31° to the right." With the
 * handwheel turned it says first where the wheels point.
 */
export function doingWords(car: MovedCar, style: LengthStyle): string {
  if (!car.standing) return `${capitalised(FAILURE_WORDS[car.failure])}.`;
  const { pose, wheels } = car;
  const pointed = isTurned(pose) ? [`left and right wheel point ${anglesWords(car)}`] : [];
  const own = isTurned(pose) && !isMoved(pose) ? [] : [byThemselves(wheels.bumpSteer)];
  return `${standingWords(car, pose, style)}: ${[...pointed, ...own].join('; ')}.`;
}

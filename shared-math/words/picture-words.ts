import { distance, type Point } from '../geometry/points.ts';
import type { Layout } from '../layout/index.ts';
import { arrangementOf } from '../linkage/index.ts';
import type { Turn } from '../pictorial/index.ts';
import { routeObstacles, segmentToObstacle } from '../shaft/index.ts';
import { toDegrees } from '../units/index.ts';
import { LOCATION_WORDS, wordsOf } from './car-words.ts';

const COMPASS = [
  'from ahead',
  'from ahead and the left',
  'from the left',
  'from behind and the left',
  'from behind',
  'from behind and the right',
  'from the right',
  'from ahead and the right',
] as const;

/** From where a picture looks at the car: "from ahead and the left, from above". */
export function turnWordsOf({ azimuth, elevation }: Turn): string {
  const height = toDegrees(elevation);
  if (height > 80) return 'from straight above';
  const around = Math.round(azimuth / (Math.PI / 4));
  const where = COMPASS[((around % 8) + 8) % 8] as string;
  if (height < 6) return `${where}, level with it`;
  return `${where}, ${height < 22 ? 'a little from above' : height < 55 ? 'from above' : 'well from above'}`;
}

/** What the steering shaft passes nearest, and how near; undefined if there is no shaft or nothing to pass. */
function nearestToShaft(layout: Layout): { name: string; distance: number } | undefined {
  const { shaft } = layout;
  if (!shaft) return undefined;
  const places = [shaft.column.end, ...shaft.joints.map(({ centre }) => centre), shaft.box.end];
  let nearest: { name: string; distance: number } | undefined;
  for (const obstacle of routeObstacles(layout))
    for (let i = 1; i < places.length; i += 1) {
      const [from, to] = [places[i - 1] as Point, places[i] as Point];
      if (distance(from, to) === 0) continue;
      const away = segmentToObstacle(obstacle, from, to);
      if (!nearest || away < nearest.distance) nearest = { name: obstacle.name, distance: away };
    }
  return nearest;
}

const inSentence = (name: string) => `${name.charAt(0).toLowerCase()}${name.slice(1)}`;

/**
 * What the pictorial shows, for whoever cannot see it: from where, what holds and steers the axle, where the shaft passes, and
 * in which pose. `pose` is that in words, `length` writes a length in the reader's unit.
 */
export function pictureWords(
  layout: Layout,
  turn: Turn,
  pose: string,
  length: (mm: number) => string,
): string {
  const { box, dragLinkTo } = layout.steering;
  const boxSide = box.sectorCentre[1] < 0 ? 'right' : 'left';
  const behind = -box.pitmanBall[0];
  const from = `${length(Math.abs(behind))} ${behind >= 0 ? 'behind' : 'ahead of'} the axle`;
  const link =
    arrangementOf(layout) === 'side'
      ? `The drag link runs along the car from the pitman arm on the ${boxSide}, ${from}, to the ${dragLinkTo} wheel’s steering arm.`
      : `The drag link runs across the car from the pitman arm on the ${boxSide}, ${from}, to the ${dragLinkTo} wheel’s steering arm.`;
  const joints = layout.shaft?.joints.length ?? 0;
  const near = nearestToShaft(layout);
  const past =
    near === undefined
      ? ''
      : near.distance < 0
        ? ` Its middle line runs into the ${inSentence(near.name)}.`
        : ` What its middle line passes nearest is the ${inSentence(near.name)}, ${length(near.distance)} away.`;
  const shaft = layout.shaft
    ? ` The steering shaft runs from the column to the box by ${joints} joint${joints === 1 ? '' : 's'}.${past}`
    : ' No steering shaft is drawn.';
  return (
    `The front end in space, seen ${turnWordsOf(turn)}, at ${pose}. ` +
    `The ${layout.axle.beam === 'tube' ? 'tube axle' : 'I-beam axle'} is located by ${wordsOf(LOCATION_WORDS, layout.location.kind)}. ` +
    `${link}${shaft}`
  );
}

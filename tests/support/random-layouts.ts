import { type LayoutDocument, readLayout } from '../../shared-math/layout/index.ts';
import { type Random, seededRandom } from '../../shared-math/solve/random.ts';
import { CROSS_STEER, LATERALS, LOCATIONS, PLAIN_HALF, rawLayout, SIDE_STEER } from './layouts.ts';

/** Every number of a value moved by up to `spread` either way, three at a time as points are; other values stay. */
function jittered(value: unknown, spread: number, random: Random): unknown {
  if (Array.isArray(value)) return value.map((entry) => jittered(entry, spread, random));
  if (typeof value === 'number') return value + spread * (2 * random() - 1);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, entry]) => [key, jittered(entry, spread, random)]),
  );
}

/** Points of a part moved; its angles, axis and other facts as they are. */
function moved<Part extends Record<string, unknown>>(
  part: Part,
  spread: number,
  random: Random,
  keep: string[],
): Part {
  return Object.fromEntries(
    Object.entries(part).map(([key, entry]) => [
      key,
      keep.includes(key) ? entry : jittered(entry, spread, random),
    ]),
  ) as Part;
}

/**
 * A random layout document, or undefined if the numbers make none: any location, lateral and beam; points within
 * `spread` mm of usual places, so that a small spread makes cars and a large one nonsense.
 */
export function randomLayout(seed: number, spread: number): LayoutDocument | undefined {
  const random = seededRandom(seed);
  const one = <Value>(list: readonly Value[]) => list[Math.floor(random() * list.length)] as Value;
  const half = () => {
    const side = moved(PLAIN_HALF, spread, random, ['camber', 'toeIn']);
    return { ...side, camber: 10 * (random() - 0.5), toeIn: 4 * (random() - 0.5) };
  };
  const left = half();
  const radius = (left.wheelCentre as number[])[2] as number;
  const steering = one([SIDE_STEER, CROSS_STEER]);
  const { box, ...arm } = steering;
  const across = (part: ReturnType<typeof half>) =>
    Object.fromEntries(
      Object.entries(part).map(([key, entry]) => [
        key,
        Array.isArray(entry) ? [entry[0] as number, -(entry[1] as number), entry[2] as number] : entry,
      ]),
    );
  const document = readLayout(
    rawLayout({
      car: {
        wheelbase: 2640,
        frontAxleLoad: 4900,
        tyreRadius: Math.max(radius, 50),
        tyreWidth: 150,
        handwheelRadius: 190,
      },
      axle: { beam: one(['i-beam', 'tube']), left, right: random() < 0.5 ? 'mirror' : across(half()) },
      location: moved(LOCATIONS[one(Object.keys(LOCATIONS) as (keyof typeof LOCATIONS)[])], spread, random, [
        'kind',
        'right',
      ]),
      lateral: moved(LATERALS[one(Object.keys(LATERALS) as (keyof typeof LATERALS)[])], spread, random, [
        'kind',
      ]),
      steering: {
        ...moved(arm, spread, random, ['dragLinkTo']),
        box: {
          ...moved(box, spread, random, ['ratio', 'sectorTravel', 'assist', 'sectorAxis']),
          sectorAxis: (box.sectorAxis as number[]).map((value) => value + 0.6 * (random() - 0.5)),
        },
      },
    }),
  );
  return document.ok ? document.value : undefined;
}

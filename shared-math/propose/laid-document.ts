import type { Layout, LayoutDocument, ShaftDocument } from '../layout/index.ts';
import { withMovedPlanned } from '../layout/index.ts';
import { asAsked, type Car } from './car.ts';

/** mm and shares of a direction that a document keeps of what a search found: finer than anybody builds. */
const PLACES = 100;
const DIRECTIONS = 100_000;

/** Ends and stock are what they are: a part's sizes are not rounded. */
const OF_PARTS = new Set(['fit', 'columnSide', 'boxSide', 'stock', 'limit']);

const rounded = (value: number, to: number) => Math.round(value * to) / to + 0;

/** Every triple of numbers inside rounded: directions by their names, places else. */
function tidied<Value>(value: Value, key = ''): Value {
  if (OF_PARTS.has(key)) return value;
  if (typeof value === 'number') return rounded(value, PLACES) as Value;
  if (Array.isArray(value)) {
    const to = /axis$/i.test(key) ? DIRECTIONS : PLACES;
    return (
      value.every((entry) => typeof entry === 'number')
        ? value.map((entry) => rounded(entry as number, to))
        : value.map((entry) => tidied(entry))
    ) as Value;
  }
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, entry]) => [name, tidied(entry, name)]),
  ) as Value;
}

/**
 * The whole document of a laid layout, as the car was asked about: in its own hand, rounded, with what was laid marked as
 * planned. Nothing but steering, lateral bar, tie rod and shaft is other than asked.
 */
export function laidDocument(
  car: Car,
  layout: Layout,
  shaft: ShaftDocument | null,
  name: string,
): LayoutDocument {
  const { held, document } = car;
  const leftBall = layout.axle.left.tieRodBall;
  const moved = leftBall.some((value, i) => value !== document.axle.left.tieRodBall[i]);
  const laid = asAsked(car, {
    ...document,
    steering: tidied(layout.steering),
    lateral: held.has('lateral') ? document.lateral : tidied(layout.lateral),
    shaft: tidied(shaft),
    ...(moved
      ? { axle: { ...document.axle, left: { ...document.axle.left, tieRodBall: tidied(leftBall) } } }
      : {}),
  });
  const { asked } = car;
  const { studs: _, ...rest } = asked;
  const whole: LayoutDocument = {
    ...rest,
    name,
    notes: '',
    steering: laid.steering,
    lateral: laid.lateral === undefined || held.has('lateral') ? asked.lateral : laid.lateral,
    axle: moved ? laid.axle : asked.axle,
    shaft: held.has('shaft') ? standing(asked.shaft, shaft) : laid.shaft,
    ...(asked.studs ? { studs: studsLeft(asked.studs) } : {}),
  };
  return withMovedPlanned(asked, whole);
}

/** A shaft that stands as it was asked about, at the input of the box that it then leads to. */
function standing(asked: ShaftDocument | null, laid: ShaftDocument | null): ShaftDocument | null {
  if (!asked || !laid) return asked;
  const { fit: _, ...box } = asked.box;
  const { fit } = laid.box;
  return { ...asked, box: { ...box, ...(fit ? { fit } : {}) } };
}

/** Studs were turned for the arms that were there: those of the new ones stand as usual. */
function studsLeft(studs: NonNullable<LayoutDocument['studs']>): NonNullable<LayoutDocument['studs']> {
  return Object.fromEntries(Object.entries(studs).filter(([id]) => !/^(steering|lateral)\./.test(id)));
}

import { distance } from '../../../../shared-math/geometry/points.ts';
import type { Layout } from '../../../../shared-math/layout/index.ts';
import { formatDecimal, MM_PER_INCH } from '../../../../shared-math/units/index.ts';
import { type Length, linkList } from '../links.ts';
import type { SheetModel } from '../sheet-model.ts';

/** N in a pound-force (0.45359237 kg at 9.80665 m/s²). */
const NEWTONS_PER_POUND = 4.4482216152605;

type Spring = NonNullable<NonNullable<Layout['ride']>['spring']>;

/** "25.0 N/mm each side", "143 lb/in each side". */
function rateWords(rate: number, { style }: SheetModel): string {
  return style.unit === 'mm'
    ? `${formatDecimal(rate, 1)} N/mm each side`
    : `${formatDecimal((rate * MM_PER_INCH) / NEWTONS_PER_POUND, 0)} lb/in each side`;
}

/** What is given of the springs themselves. */
function makeWords(spring: Spring | undefined, model: SheetModel): string {
  const { length } = model;
  if (spring?.kind === 'leaf')
    return `${spring.leaves} ${spring.leaves === 1 ? 'leaf' : 'leaves'} ${length(spring.width)} by ${length(spring.thickness)}, ${length(spring.length)} from eye to eye`;
  if (spring?.kind === 'rate') return rateWords(spring.rate, model);
  if (spring?.kind === 'measured') return 'stiffness as measured on the car';
  return 'size and stiffness not given in this layout';
}

/** The two halves of a leaf spring along the rail: "fixed eye to seat …, seat to shackle eye …". */
function leafLines(model: SheetModel): string[] {
  const { both, layout } = model;
  const made = makeWords(layout.ride?.spring, model);
  const halves = linkList(layout).filter(({ name }) => name.startsWith('Leaf spring'));
  const at = (suffix: string) => halves.filter(({ name }) => name.endsWith(suffix));
  const words = (parts: readonly Length[]) =>
    parts.map(({ between, length }) => `${between} ${both(length)}`).join(', ');
  // A half that is alike on both sides stands for both of them.
  const each = at(', each side');
  if (each.length === 2) return [`2 × Leaf spring with shackle, ${words(each)}; ${made}`];
  return (['left', 'right'] as const).map(
    (side) => `1 × Leaf spring with shackle, ${side}, ${words([...at(`, ${side}`), ...each])}; ${made}`,
  );
}

/** The springs of the parts list; what is not given of them is said to be missing. */
export function springLines(model: SheetModel): string[] {
  const { layout, both } = model;
  const { location, lateral } = layout;
  if (location.kind === 'parallel-leaf') return leafLines(model);
  const spring = layout.ride?.spring;
  const made = makeWords(spring, model);
  if (lateral.kind === 'spring')
    return [
      `1 × Spring across the car, which also holds the axle sideways${lateral.height === undefined ? '' : ` ${both(lateral.height)} above ground`}; ${made}`,
    ];
  if (lateral.kind === 'fixed-spring')
    return [
      `1 × Spring across the car with a shackle at one end, ${both(distance(lateral.eye, lateral.clamp))} straight from its fixed eye to its clamp, which also holds the axle sideways; ${made}`,
    ];
  if (spring?.kind === 'leaf')
    return [
      spring.lie === 'across' ? `1 × Spring across the car; ${made}` : `2 × Spring along the rail; ${made}`,
    ];
  return [`Front springs; ${spring ? made : 'kind, size and stiffness not given in this layout'}`];
}

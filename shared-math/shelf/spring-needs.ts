import { distance } from '../geometry/points.ts';
import type { Layout, SpringDocument } from '../layout/index.ts';
import { sizeWords } from '../shaft/index.ts';
import { formatDecimal, type LengthStyle, MM_PER_INCH, NEWTONS_PER_POUND } from '../units/index.ts';
import { tapeWords } from './link-needs.ts';
import type { PartNeed } from './part-need.ts';

/** "25.0 N/mm each side", "143 lb/in each side". */
function rateWords(rate: number, style: LengthStyle): string {
  return style.unit === 'mm'
    ? `${formatDecimal(rate, 1)} N/mm each side`
    : `${formatDecimal((rate * MM_PER_INCH) / NEWTONS_PER_POUND, 0)} lb/in each side`;
}

/** What is given of the springs themselves. */
function makeWords(spring: SpringDocument | undefined, style: LengthStyle, quarter: boolean): string {
  const size = (mm: number) => sizeWords(mm, style);
  if (spring?.kind === 'leaf')
    return `${spring.leaves} ${spring.leaves === 1 ? 'leaf' : 'leaves'} ${size(spring.width)} by ${size(spring.thickness)}, ${tapeWords(spring.length, style)} ${quarter ? 'from clamp to eye' : 'from eye to eye'}`;
  if (spring?.kind === 'rate') return rateWords(spring.rate, style);
  if (spring?.kind === 'measured') return 'stiffness as measured on the car';
  return 'size and stiffness not given in this layout';
}

const line = (count: number, words: string): PartNeed => ({ wanted: { kind: 'fixing' }, count, words });

/** The springs of a car; what is not given of them is said to be missing. */
export function springNeeds({ location, lateral, ride }: Layout, style: LengthStyle): PartNeed[] {
  const made = makeWords(ride?.spring, style, location.kind === 'quarter-elliptic');
  const shackles = (count: number) =>
    line(count, 'Spring shackle with its bushings and bolts; length not given in this layout');
  if (location.kind === 'parallel-leaf') {
    const of = (side: 'left' | 'right') => {
      const { fixedEye, seat, shackleEye } = location[side];
      return `fixed eye to seat ${tapeWords(distance(fixedEye, seat), style)}, seat to shackle eye ${tapeWords(distance(seat, shackleEye), style)}; ${made}`;
    };
    const [left, right] = [of('left'), of('right')];
    const leaves =
      left === right
        ? [line(2, `Leaf spring, ${left}`)]
        : [line(1, `Leaf spring, left, ${left}`), line(1, `Leaf spring, right, ${right}`)];
    return [...leaves, shackles(2), line(2, 'Spring bolt with bushing, fixed eye')];
  }
  if (location.kind === 'quarter-elliptic')
    return [
      line(
        2,
        `Quarter-elliptic spring, clamp to eye ${tapeWords(distance(location.left.clamp, location.left.eye), style)} straight; ${made}`,
      ),
      ...(location.eyes === 'pinned' ? [line(2, 'Spring bolt with bushing, eye')] : []),
    ];
  if (lateral.kind === 'spring')
    return [
      line(
        1,
        `Spring across the car, which also holds the axle sideways${lateral.height === undefined ? '' : ` ${tapeWords(lateral.height, style)} above ground`}; ${made}`,
      ),
      shackles(2),
    ];
  if (lateral.kind === 'fixed-spring')
    return [
      line(
        1,
        `Spring across the car with a shackle at one end, ${tapeWords(distance(lateral.eye, lateral.clamp), style)} straight from its fixed eye to its clamp, which also holds the axle sideways; ${made}`,
      ),
      shackles(1),
      line(1, 'Spring bolt with bushing, fixed eye'),
    ];
  const spring = ride?.spring;
  if (spring?.kind === 'leaf')
    return spring.lie === 'across'
      ? [line(1, `Spring across the car; ${made}`), shackles(2)]
      : [line(2, `Spring along the rail; ${made}`), shackles(2)];
  return [
    line(1, `Front springs, the set; ${spring ? made : 'kind, size and stiffness not given in this layout'}`),
  ];
}

import type { LinkMaking } from './making.ts';
import { MATERIALS, type MaterialStrength } from './materials.ts';

/** A round section: mm², mm⁴, mm. */
export interface RoundSection {
  readonly area: number;
  readonly inertia: number;
  /** Radius of gyration. */
  readonly gyration: number;
  readonly outside: number;
}

/** Of a tube by outside and wall, or of a solid rod where the wall is absent; mm. */
export function roundSection(outside: number, wall?: number): RoundSection {
  const inside = wall === undefined ? 0 : outside - 2 * wall;
  const area = (Math.PI / 4) * (outside * outside - inside * inside);
  const inertia = (Math.PI / 64) * (outside ** 4 - inside ** 4);
  return { area, inertia, gyration: Math.sqrt(inertia / area), outside };
}

/** How a straight strut with a pin or ball at each end gives way. */
export interface ColumnLoad {
  /** N: the push at which it does. */
  readonly load: number;
  /** Long struts bow out while the steel is elastic (Euler); short ones yield first in part (J. B. Johnson). */
  readonly by: 'euler' | 'johnson';
  /** Length over radius of gyration, and where Johnson's parabola meets Euler's curve. */
  readonly slenderness: number;
  readonly limit: number;
}

/**
 * The push that a straight strut bears between pins.
 * With slenderness s = L/ρ and its limit C = √(2 π² E/Y): Euler's π² E A/s² from C on, below it Johnson's parabola
 * A Y (1 - Y s²/(4 π² E)), which meets Euler's curve at C with the same slope, at half of the yield.
 * Units:   mm, N, N/mm².
 * Source:  Euler; J. B. Johnson's parabola, textbooks of machine design (from memory).
 * Checked: tests/reference/columns.test.ts (two worked examples of textbooks; a beam on finite differences).
 */
export function columnLoad(section: RoundSection, length: number, strength: MaterialStrength): ColumnLoad {
  const { area, gyration } = section;
  const { modulus } = strength;
  const slenderness = length / gyration;
  const limit = Math.sqrt((2 * Math.PI ** 2 * modulus) / strength.yield);
  if (slenderness >= limit)
    return { load: (Math.PI ** 2 * modulus * area) / slenderness ** 2, by: 'euler', slenderness, limit };
  const share = 1 - (strength.yield * slenderness ** 2) / (4 * Math.PI ** 2 * modulus);
  return { load: area * strength.yield * share, by: 'johnson', slenderness, limit };
}

/**
 * The push at which a bent strut's fibres yield in the middle.
 * Bent by o at the middle, a push P bows it to o/(1 - P/Pe), Pe Euler's load: at the fibre c from the middle line
 * σ = P/A + P o c/(I (1 - P/Pe)). With Ny = A Y and η = o c/ρ² this is Y where (Ny - P)(Pe - P) = η P Pe, so that
 * P = (b - √(b² - 4 Ny Pe))/2 with b = Ny + (1 + η) Pe.
 * Units:   mm, N. Source: Ayrton and Perry's column with a bow, textbooks (from memory); exact for a bow of half a sine.
 * Checked: tests/reference/columns.test.ts (the fibre's stress put back; a beam on finite differences).
 */
export function bentStrutLoad(
  section: RoundSection,
  length: number,
  strength: MaterialStrength,
  offset: number,
): number {
  const { area, inertia, gyration, outside } = section;
  const squash = area * strength.yield;
  const euler = (Math.PI ** 2 * strength.modulus * inertia) / length ** 2;
  const eta = (offset * outside) / 2 / gyration ** 2;
  const b = squash + (1 + eta) * euler;
  // Written so that it loses no digits where the bow is large: the smaller root by the product of both.
  return (2 * squash * euler) / (b + Math.sqrt(b * b - 4 * squash * euler));
}

/** What a link bears along its ends' straight line, N, and by what it gives way. Rough bounds: no strength is certified. */
export interface LinkBears {
  /** N of push and of pull. */
  readonly push: number;
  readonly pull: number;
  readonly pushBy: 'euler' | 'johnson' | 'bend';
  readonly pullBy: 'yield' | 'bend';
  readonly slenderness: number;
  readonly limit: number;
  /** True if section, wall, material, outside or the straightness is assumed. */
  readonly assumed: boolean;
}

/**
 * What a link of `length` mm between its ends' centres bears. Pull: yield of the tube's section, of a bent one at the
 * bend, P (1/A + o c/I) = Y. The threads, the ends, welds and holes are left out, and so is fatigue: they are what breaks.
 */
export function linkBears(making: LinkMaking, length: number): LinkBears {
  const { outside, wall, material, offset, section } = making;
  const round = roundSection(outside.value, wall?.value);
  const strength = MATERIALS[material.value];
  const column = columnLoad(round, length, strength);
  const bent = offset.value > 0;
  const pull = strength.yield / (1 / round.area + (offset.value * round.outside) / 2 / round.inertia);
  return {
    push: bent ? Math.min(column.load, bentStrutLoad(round, length, strength, offset.value)) : column.load,
    pull,
    pushBy: bent ? 'bend' : column.by,
    pullBy: bent ? 'bend' : 'yield',
    slenderness: column.slenderness,
    limit: column.limit,
    assumed: [outside, wall, material, offset, section].some((each) => each?.assumed === true),
  };
}

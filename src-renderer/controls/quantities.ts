import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { formatDecimal, type LengthUnit, MM_PER_INCH } from '../../shared-math/units/index.ts';

// Quantities of a car on its springs, as people write them; inside kg, N/mm, N·s/mm, N·m/°, mm/s and s.

/** kg in a pound, exactly; and N in a pound-force, with the standard acceleration of free fall. */
const KG_PER_POUND = 0.45359237;
const NEWTONS_PER_POUND = KG_PER_POUND * 9.80665;
const MM_PER_MILE = 1_609_344;

/** One quantity: its units with what one of each is inside, the first of each list being the shown one. */
export interface Quantity {
  readonly what: string;
  readonly in: readonly [unit: string, factor: number];
  readonly mm: readonly [unit: string, factor: number];
  readonly others?: readonly (readonly [unit: string, factor: number])[];
  readonly decimals: { readonly in: number; readonly mm: number };
  /** For the line that says how to write it. */
  readonly example: string;
}

export const MASS: Quantity = {
  what: 'a weight',
  in: ['lb', KG_PER_POUND],
  mm: ['kg', 1],
  others: [['lbs', KG_PER_POUND]],
  decimals: { in: 0, mm: 1 },
  example: '180 lb or 82 kg',
};

export const RATE: Quantity = {
  what: 'a spring rate',
  in: ['lb/in', NEWTONS_PER_POUND / MM_PER_INCH],
  mm: ['N/mm', 1],
  others: [['kg/mm', 9.80665]],
  decimals: { in: 0, mm: 1 },
  example: '120 lb/in or 21 N/mm',
};

export const DAMPING: Quantity = {
  what: 'a damper rate',
  in: ['lb·s/in', NEWTONS_PER_POUND / MM_PER_INCH],
  mm: ['N·s/mm', 1],
  others: [
    ['lbs/in', NEWTONS_PER_POUND / MM_PER_INCH],
    ['lb s/in', NEWTONS_PER_POUND / MM_PER_INCH],
    ['ns/mm', 1],
    ['n s/mm', 1],
  ],
  decimals: { in: 1, mm: 2 },
  example: '6 lb·s/in or 1.05 N·s/mm',
};

const STIFFNESS = {
  in: ['lb·ft/°', NEWTONS_PER_POUND * 0.3048],
  mm: ['N·m/°', 1],
  others: [
    ['lbft/°', NEWTONS_PER_POUND * 0.3048],
    ['lb ft/°', NEWTONS_PER_POUND * 0.3048],
    ['nm/°', 1],
    ['n m/°', 1],
  ],
  decimals: { in: 0, mm: 0 },
  example: '40 lb·ft/° or 54 N·m/°',
} as const;

export const ROLL_STIFFNESS: Quantity = { what: 'a roll stiffness', ...STIFFNESS };

/** N·m inside. */
export const MOMENT: Quantity = {
  what: 'a moment',
  in: ['lb·ft', NEWTONS_PER_POUND * 0.3048],
  mm: ['N·m', 1],
  decimals: { in: 0, mm: 0 },
  example: '1090 lb·ft or 1480 N·m',
};

/** N·m at the handwheel, which takes little. */
export const RIM_MOMENT: Quantity = { ...MOMENT, decimals: { in: 1, mm: 2 } };

/** Of an axle against its brakes' twist. */
export const WIND_UP_STIFFNESS: Quantity = {
  what: 'a stiffness',
  ...STIFFNESS,
  example: '270 lb·ft/° or 366 N·m/°',
};

export const SPEED: Quantity = {
  what: 'a speed',
  in: ['mph', MM_PER_MILE / 3600],
  mm: ['km/h', 1e6 / 3600],
  others: [
    ['kmh', 1e6 / 3600],
    ['m/s', 1000],
  ],
  decimals: { in: 0, mm: 0 },
  example: '25 mph or 40 km/h',
};

export const TIME: Quantity = {
  what: 'a time',
  in: ['s', 1],
  mm: ['s', 1],
  decimals: { in: 1, mm: 1 },
  example: '2.5 s',
};

/** A quantity in the reader's unit: "112 lb/in". */
export function formatQuantity(
  { in: inch, mm, decimals }: Quantity,
  value: number,
  unit: LengthUnit,
): string {
  const [name, factor] = unit === 'in' ? inch : mm;
  return `${formatDecimal(value / factor, decimals[unit])} ${name}`;
}

const NUMBER = /^[+-]?(\d+([.,]\d+)?|[.,]\d+)/;

/** Reads a quantity; without a unit it is the reader's own. */
export function parseQuantity(quantity: Quantity, text: string, unit: LengthUnit): Outcome<number, string> {
  const typed = text.trim();
  if (typed === '') return failed(`${quantity.what} is missing`);
  const number = NUMBER.exec(typed)?.[0];
  const rest = typed
    .slice(number?.length ?? 0)
    .trim()
    .toLowerCase();
  const own = unit === 'in' ? quantity.in : quantity.mm;
  const named = [quantity.in, quantity.mm, ...(quantity.others ?? [])];
  const factor = rest === '' ? own[1] : named.find(([name]) => name.toLowerCase() === rest)?.[1];
  if (number === undefined || factor === undefined)
    return failed(`"${typed}" is not ${quantity.what}; write for example ${quantity.example}`);
  return succeeded(Number(number.replace(',', '.')) * factor);
}

import { capitalised } from '../../../../shared-math/capitalised.ts';
import type { ShopLimits } from '../../../../shared-math/findings/index.ts';
import type { LayoutDocument } from '../../../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../../../shared-math/outcome.ts';
import {
  FREEDOMS,
  type FreedomName,
  type Holds,
  holdsOf,
  USUAL_WITHIN,
} from '../../../../shared-math/tune/index.ts';
import { parseAngle, parseLength } from '../../../../shared-math/units/index.ts';
import { parsePlain } from '../../../controls/plain-numbers.ts';

// What may move and what must hold, as somebody ticks and types it.

/** mm from where it is drawn. */
export interface Reach {
  readonly from: number;
  readonly to: number;
}

export interface FreeField extends Reach {
  readonly name: FreedomName;
  readonly words: string;
  readonly on: boolean;
}

/** mm. Nobody moves a part further than this and still has the same car. */
const REACH_MOST = 1000;

/** mm. The round figure for readers of inches. */
const INCHES_WITHIN = 76.2;

/** What a layout's own arrangement makes worth moving first: the box in the plane in which it is judged. */
export function usualFree(document: LayoutDocument, side: boolean, unit: 'in' | 'mm'): FreeField[] {
  const within = unit === 'in' ? INCHES_WITHIN : USUAL_WITHIN;
  const first: readonly FreedomName[] = side ? ['box-up', 'box-along'] : ['box-up', 'box-across'];
  return FREEDOMS.filter((freedom) => freedom.absent(document) === undefined).map(({ name, words }) => ({
    name,
    words: capitalised(words),
    on: first.includes(name),
    from: -within,
    to: within,
  }));
}

/** How far something may move, in words: "3 in" either way, or "-1 in to 3 in". */
export function reachWords({ from, to }: Reach, length: (mm: number) => string): string {
  return Math.abs(from + to) < 1e-9 ? length(to) : `${length(from)} to ${length(to)}`;
}

/** Reads how far something may move: one length either way, or two with "to" between. */
export function parseReach(text: string, unit: 'in' | 'mm'): Outcome<Reach, string> {
  const parts = text.split(/\bto\b/i);
  if (parts.length > 2) return failed('write one length, or two with “to” between');
  const read = parts.map((part) => parseLength(part.replace(/\beither way\b/i, ''), unit));
  for (const one of read) if (!one.ok) return failed(one.failure);
  const [first, second] = read.map((one) => (one.ok ? one.value : 0)) as [number, number?];
  if (second === undefined && first < 0) return failed('a length either way is not less than nothing');
  const reach = second === undefined ? { from: -first, to: first } : { from: first, to: second };
  if (reach.from > reach.to) return failed('the first length is more than the second');
  if (Math.max(Math.abs(reach.from), Math.abs(reach.to)) > REACH_MOST)
    return failed('no part moves more than a metre');
  return succeeded(reach);
}

/** What must hold, as ticked and typed. Degrees; mm; an end that is not given is open. */
export interface HoldFields {
  readonly ratio: { readonly on: boolean; readonly least: number; readonly most: number };
  readonly lock: { readonly on: boolean; readonly least: number };
  readonly circle: { readonly on: boolean; readonly most: number };
  readonly tilt: { readonly on: boolean; readonly most: number };
  readonly clearance: { readonly on: boolean };
}

/** mm. A usual figure for a road of its time; off until somebody wants it. */
const CIRCLE_MOST = 12_000;

/** The shop's limits, each on where the layout keeps it as drawn. */
export function usualHoldFields(limits: ShopLimits, kept: Holds): HoldFields {
  const all = holdsOf(limits);
  return {
    ratio: { on: kept.ratio !== undefined, least: all.ratio.least ?? 0, most: all.ratio.most ?? 100 },
    lock: { on: kept.lock !== undefined, least: all.lock.least ?? 0 },
    circle: { on: false, most: CIRCLE_MOST },
    tilt: { on: kept.tilt !== undefined, most: all.tilt.most ?? 90 },
    clearance: { on: true },
  };
}

export function holdsFrom(fields: HoldFields, limits: ShopLimits): Holds {
  const { ratio, lock, circle, tilt, clearance } = fields;
  const all = holdsOf(limits);
  return {
    ...(ratio.on ? { ratio: { least: ratio.least, most: ratio.most } } : {}),
    ...(lock.on ? { lock: { least: lock.least } } : {}),
    ...(circle.on ? { circle: { most: circle.most } } : {}),
    ...(tilt.on ? { tilt: { most: tilt.most } } : {}),
    ...(clearance.on ? { clearance: all.clearance } : {}),
  };
}

/** Reads one figure of a hold as typed, into the fields. */
export function withTypedHold(
  fields: HoldFields,
  name: 'ratioLeast' | 'ratioMost' | 'lock' | 'circle' | 'tilt',
  typed: string,
  unit: 'in' | 'mm',
): Outcome<HoldFields, string> {
  const value =
    name === 'lock' || name === 'tilt'
      ? parseAngle(typed)
      : name === 'circle'
        ? parseLength(typed, unit)
        : parsePlain(typed);
  if (!value.ok) return value;
  if (!(value.value > 0)) return failed('must be more than nothing');
  const figure = value.value;
  switch (name) {
    case 'ratioLeast':
      if (figure > fields.ratio.most) return failed('the least ratio is more than the most');
      return succeeded({ ...fields, ratio: { ...fields.ratio, on: true, least: figure } });
    case 'ratioMost':
      if (figure < fields.ratio.least) return failed('the most is less than the least ratio');
      return succeeded({ ...fields, ratio: { ...fields.ratio, on: true, most: figure } });
    case 'lock':
      return succeeded({ ...fields, lock: { on: true, least: figure } });
    case 'circle':
      return succeeded({ ...fields, circle: { on: true, most: figure } });
    case 'tilt':
      return succeeded({ ...fields, tilt: { on: true, most: figure } });
  }
}

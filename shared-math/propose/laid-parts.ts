import type { Car } from './car.ts';

/** Gaps that no steering changes are the car's own too. */
const STEERING_PART = /^(drag-link|pitman-arm|steering-arm|box|shaft|lateral-bar|tie-rod)/;
/** What of it may stand, by what holds it. */
const HELD_PARTS = [
  ['tie-rod', /^tie-rod/],
  ['lateral', /^lateral-bar/],
] as const;

/** Whether a part, by what the gaps call it, is of what a proposal lays: what is held stands as it was. */
export const isLaid =
  (held: Car['held']) =>
  (part: string): boolean =>
    STEERING_PART.test(part) && !HELD_PARTS.some(([name, parts]) => held.has(name) && parts.test(part));

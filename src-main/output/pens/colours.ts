import type { Role } from '../../../shared-math/drawing/index.ts';

// The board's inks on white paper. Weight, dashes and signs carry every meaning, so that a black and white printer loses
// nothing: see the look's roles.

export const INK = '#22303c';
export const SOFT = '#5a6670';
export const FAINT = '#a9b0b4';
export const RULE = '#c9c2b0';
export const WASH = '#f5f1e7';
export const STEEL = '#2b65a8';
export const STOP = '#b8402a';
export const ATTENTION = '#8a5c12';
export const GOOD = '#2f6a3c';
export const WHITE = '#ffffff';

/** How the parts of a role are inked on paper; mm. */
export interface RolePen {
  readonly line: string;
  readonly width: number;
  readonly fineLine: string;
  readonly fineWidth: number;
  readonly tint: string;
}

const PLAIN: RolePen = { line: INK, width: 0.26, fineLine: '#6d7780', fineWidth: 0.16, tint: '#f1ece0' };

/** Ink on paper: what is bolted on in ink, what the handwheel moves in steel blue and nearly twice as heavy. */
export const ROLE_PENS: Record<Role, RolePen> = {
  ground: { ...PLAIN, line: '#8a9298', fineLine: '#8a9298', width: 0.2 },
  tyre: { ...PLAIN, line: '#4d5860', fineLine: '#8a9298', tint: '#f6f4ee' },
  frame: { ...PLAIN, line: '#4d5860', width: 0.22, tint: '#ece6d8' },
  axle: { ...PLAIN, width: 0.28 },
  link: PLAIN,
  spring: { ...PLAIN, width: 0.22 },
  box: { ...PLAIN, width: 0.32, tint: '#e9e2d2' },
  obstacle: { ...PLAIN, line: '#7a848b', width: 0.2, fineLine: '#c3c7c9', fineWidth: 0.12, tint: '#f8f6f1' },
  steering: { line: STEEL, width: 0.45, fineLine: '#6b8fbf', fineWidth: 0.2, tint: '#e3ebf3' },
};

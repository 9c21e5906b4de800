import type { Photo } from '../../../../shared-math/layout/index.ts';

/** mm: the diagonal of 36 by 24. */
const DIAGONAL_35 = Math.hypot(36, 24);

/** A lens is called by its focal length in millimetres wherever it is sold: "a 26 mm lens". */
export const lensName = (equivalent: number | string): string => `a ${equivalent} mm lens`;

/** "a 26 mm lens (35 mm equivalent) ± 1.3 mm". */
export function lensWords({ px, share }: NonNullable<Photo['focal']>, size: Photo['size']): string {
  const equivalent = (px / Math.hypot(...size)) * DIAGONAL_35;
  const rounded = equivalent < 100 ? equivalent.toFixed(1).replace(/\.0$/, '') : Math.round(equivalent);
  return `${lensName(rounded)} (35 mm equivalent) ± ${(share * equivalent).toFixed(1)} mm`;
}

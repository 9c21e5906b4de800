import type { LinkMaterial } from '../layout/index.ts';

/** N/mm². Young's modulus of structural and alloy steels, textbook: 200 to 210 GPa; the lower is taken. */
export const STEEL_MODULUS = 200_000;
/** N/mm². Of austenitic stainless: 193 GPa, textbook. */
export const STAINLESS_MODULUS = 193_000;

/** What a material bears, N/mm². The least yield that its standard asks; what a mill delivers is usually more. */
export interface MaterialStrength {
  readonly yield: number;
  readonly modulus: number;
  /** The standard and condition that the figure is the least of. */
  readonly source: string;
}

/**
 * Least yields by standard, all from memory: 36 ksi of ASTM A36 plate and bar, close to welded tube of low carbon;
 * 60 ksi of ASTM A513 type 5, SAE 1020 drawn over mandrel, at the wall that links have; 75 ksi of SAE 4130 tube,
 * normalised (AMS 6360), of which 60 ksi are left beside a weld that is not heat treated; 30 ksi of type 304, annealed (ASTM A269).
 */
export const MATERIALS: Readonly<Record<LinkMaterial, MaterialStrength>> = {
  'mild-steel': {
    yield: 250,
    modulus: STEEL_MODULUS,
    source: 'ASTM A36, from memory',
  },
  'drawn-steel': {
    yield: 414,
    modulus: STEEL_MODULUS,
    source: 'ASTM A513 type 5, SAE 1020, from memory',
  },
  chromoly: {
    yield: 517,
    modulus: STEEL_MODULUS,
    source: 'AMS 6360, SAE 4130 normalised, from memory; less beside a weld',
  },
  stainless: {
    yield: 207,
    modulus: STAINLESS_MODULUS,
    source: 'ASTM A269, type 304 annealed, from memory',
  },
};

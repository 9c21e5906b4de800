import type { BrakingDocument, LayoutDocument } from '../../../../shared-math/layout/index.ts';

/** The document with other facts of braking. What is given as undefined is left to what is assumed. */
export function withBraking(
  document: LayoutDocument,
  change: { readonly [Key in keyof BrakingDocument]?: BrakingDocument[Key] | undefined },
): LayoutDocument {
  const { braking, ...rest } = document;
  const given = Object.entries({ ...braking, ...change }).filter(([, value]) => value !== undefined);
  return given.length === 0 ? rest : { ...rest, braking: Object.fromEntries(given) as BrakingDocument };
}

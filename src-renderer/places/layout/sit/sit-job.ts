import type { LayoutDocument } from '../../../../shared-math/layout/index.ts';
import { type Lowered, type SitRow, sitRows } from '../../../../shared-math/sit/index.ts';

export interface SitQuestion {
  readonly document: LayoutDocument;
  readonly heights: readonly Lowered[];
}

/** Each height is a step, after which the job may be called off. */
export function* sitJob({ document, heights }: SitQuestion): Generator<undefined, readonly SitRow[]> {
  const rows: SitRow[] = [];
  for (const row of sitRows(document, heights)) {
    rows.push(row);
    yield undefined;
  }
  return rows;
}

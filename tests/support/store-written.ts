import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { sampleLayout } from './host-sample.ts';

/** The one document that a writer saves as a given revision: what is read back shows whether it is whole. */
export function writtenLayout(revision: number): LayoutDocument {
  return {
    ...sampleLayout('Arm down', 200 + (revision % 97)),
    notes: `Saved as revision ${revision}. `.repeat(50),
  };
}

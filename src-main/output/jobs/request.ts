import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
import type { Turn } from '../../../shared-math/pictorial/index.ts';
import type { SweptPart } from '../../../shared-math/swept/index.ts';
import type { DrawingFormat, DrawnPose, DrawnView } from '../drawings/job.ts';
import type { FilmShape } from '../film/job.ts';
import type { PrintJob, PrintKind } from '../pages/job.ts';
import type { Paper } from '../pens/papers.ts';
import type { Numbers, TableName } from '../tables/index.ts';

/** What is to leave the board. */
export type OutputRequest =
  | {
      readonly kind: 'print';
      readonly print: PrintKind;
      readonly paper: Paper;
      readonly rooms?: readonly SweptPart[] | undefined;
    }
  | {
      readonly kind: 'drawing';
      readonly view: DrawnView;
      readonly format: DrawingFormat;
      readonly pose: DrawnPose;
      readonly turn?: Turn;
      readonly rooms?: readonly SweptPart[] | undefined;
    }
  | { readonly kind: 'moving' }
  | ({ readonly kind: 'film' } & FilmShape)
  | { readonly kind: 'table'; readonly table: TableName; readonly numbers?: Numbers };

/** The counter of a layout's sheets. */
export interface SheetCount {
  /** The revision that a sheet made now has. */
  readonly revision: () => number;
  /** Counts the sheet that was made. */
  readonly wentOut: () => void;
}

/** Of which layout, for whom, in which unit. */
export interface Source
  extends Pick<PrintJob, 'unit' | 'fraction' | 'limits' | 'survey' | 'shelf' | 'date' | 'beside'> {
  readonly document: LayoutDocument;
  readonly customer: string;
  readonly car: string;
  /** Who draws in the shop. */
  readonly drawnBy?: string;
  /** How the store counts the sheets of this layout that go out; absent where nothing counts them. */
  readonly counted?: SheetCount;
  /** Pages to look at in place of the file. */
  readonly preview: boolean;
}

/** How the work reports and is called off. */
export interface Watch {
  readonly signal: AbortSignal;
  readonly progress: (done: number, of: number, what: string) => void;
}

/** A file that is ready, or the pages of a preview, each an SVG. */
export interface Made {
  readonly fileName: string;
  readonly type: string;
  readonly parts: readonly Uint8Array[];
}

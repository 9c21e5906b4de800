import type { CarSurvey } from '../../../shared-math/adjust/list/index.ts';
import type { ShopLimits } from '../../../shared-math/findings/index.ts';
import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
import type { Shelved } from '../../../shared-math/shelf/index.ts';
import type { SweptPart } from '../../../shared-math/swept/index.ts';
import type { LengthStyle, LengthUnit } from '../../../shared-math/units/index.ts';
import type { Paper } from '../pens/papers.ts';

/** What can be printed: the build sheet, templates at full size, the customer's page, the list to measure the car by. */
export const PRINT_KINDS = ['sheet', 'templates', 'customer', 'measuring'] as const;
export type PrintKind = (typeof PRINT_KINDS)[number];

/** Something to be printed. */
export interface PrintJob {
  readonly kind: PrintKind;
  readonly document: LayoutDocument;
  /** The variant that it is compared with, where a picture shows both. */
  readonly beside?: LayoutDocument;
  readonly customer?: string;
  readonly car?: string;
  readonly paper: Paper;
  /** The unit that comes first. */
  readonly unit: LengthUnit;
  readonly fraction: LengthStyle['fraction'];
  /** What has been measured on the car so far. */
  readonly survey?: CarSurvey;
  /** Who drew it; empty or absent where nobody said. */
  readonly drawnBy?: string;
  /** Which sheet of this layout's it is, as the store counts them; absent where nothing counts them. */
  readonly revision?: number;
  /** What lies on the shop's shelf; absent where nobody holds one against the parts. */
  readonly shelf?: readonly Shelved[];
  /** The shop's own limits, where it has some. */
  readonly limits?: ShopLimits;
  /** Parts of which the sheet's views show the room that they need over travel and turn. */
  readonly rooms?: readonly SweptPart[];
  /** Stands on every page; the same date gives the same bytes. */
  readonly date: Date;
  /** Only the day of the date is known. */
  readonly dayOnly?: boolean;
  /** Called off: `printPdf` rejects with its reason, and nothing was written anywhere. */
  readonly signal?: AbortSignal;
  /** Called after each page: how many are done, of how many, and what it was. */
  readonly progress?: (done: number, of: number, what: string) => void;
}

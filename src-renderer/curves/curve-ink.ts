/** How a curve is inked; dash and weight tell curves apart where colour does not. */
export interface CurveInk {
  /** Name of one of the page's colour tokens. */
  readonly token: 'ink' | 'ink-soft' | 'steel' | 'good';
  readonly width: number;
  /** px of line and gap in turn, at weight 1; a full line where not given. */
  readonly dash?: readonly number[];
}

export const DASHED = [5, 3.5];
export const DOTTED = [1.5, 3.5];

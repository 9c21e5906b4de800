/** A length by the tape against the same length of the tracing; mm. */
export interface TapeCheck {
  readonly traced: number;
  readonly tape: number;
  /** Traced less tape. */
  readonly difference: number;
  /** What a pixel of clicking error at each end explains. */
  readonly explained: number;
  readonly agrees: boolean;
}

/** Holds a traced length against the tape: they agree where a px of error at each of its ends explains the difference. */
export function checkTape(traced: number, tape: number, mmPerPixel: number): TapeCheck {
  const explained = Math.SQRT2 * mmPerPixel;
  const difference = traced - tape;
  return { traced, tape, difference, explained, agrees: Math.abs(difference) <= explained };
}

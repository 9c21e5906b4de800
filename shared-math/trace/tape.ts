/** A length by the tape against the same length of the tracing; mm. */
export interface TapeCheck {
  readonly traced: number;
  readonly tape: number;
  /** Traced less tape. */
  readonly difference: number;
  /** What clicking explains, at the length's own ends and at those that the scale was taken from. */
  readonly explained: number;
  readonly agrees: boolean;
}

/** How finely a photo was clicked on and what its scale rests on. */
export interface ClickedOn {
  readonly mmPerPixel: number;
  /** px of the original that one click may be off: more than one where the photo is worked with reduced. */
  readonly click: number;
  /** mm between the ends of what the scale rests on. */
  readonly scaleBase: number;
}

/**
 * Holds a traced length against the tape. A click off at each of its two ends moves the length by √2 clicks; the scale is off
 * by √2 clicks over its own base, and with it the length in proportion. The two have nothing to do with one another, so
 * their squares add.
 */
export function checkTape(
  traced: number,
  tape: number,
  { mmPerPixel, click, scaleBase }: ClickedOn,
): TapeCheck {
  const explained = Math.SQRT2 * click * mmPerPixel * Math.hypot(1, traced / scaleBase);
  const difference = traced - tape;
  return { traced, tape, difference, explained, agrees: Math.abs(difference) <= explained };
}

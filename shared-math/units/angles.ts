/** An angle in degrees: documents, command line and screens. A plain number may be given where one is asked. */
export type Degrees = number & { readonly unit?: 'degree' };

/** An angle in radians: everything inside. Degrees given where radians are asked do not compile. */
export type Radians = number & { readonly unit?: 'radian' };

export function toRadians(angle: Degrees): Radians {
  return (angle * Math.PI) / 180;
}

export function toDegrees(angle: Radians): Degrees {
  return (angle * 180) / Math.PI;
}

/** "2.6°", "-0.02°". A number that rounds to nothing shows as plain 0, without a sign. */
export function formatDegrees(angle: Degrees, decimals = 1): string {
  return `${formatDecimal(angle, decimals)}°`;
}

/** A decimal figure without a negative zero. */
export function formatDecimal(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

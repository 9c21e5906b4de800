/** The value, or the end of the range that it lies beyond. Any unit; `least` is not above `most`. */
export const clamp = (value: number, least: number, most: number) => Math.min(Math.max(value, least), most);

/** The two sides of the car, named from the driver's seat. */
export type Side = 'left' | 'right';

export const SIDES: readonly Side[] = ['left', 'right'];

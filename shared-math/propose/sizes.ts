// What steering parts usually measure, as far as no part says otherwise: common practice, no published source.

/** mm: arms as they are usually made, 4 1/2 to 7 in; common practice, no published source. */
export const ARM = { least: 114.3, usual: 146, most: 177.8 } as const;
/** rad: how far a pitman arm may lean from square to its link, splined on as it pleases. */
export const LEAN = 0.21;
/** mm either way of the zero-slope line. */
export const OFF_LINE = 12;
/** mm of a box's body about its middle along the sector shaft, to its cover and to its face; an assisted one is larger. */
export const BODY = { cover: 52, face: 22, radius: 44, assisted: 1.22 } as const;
/** mm that a box's mounting plate and bracket take at the least and at the most. */
export const PLATE = { least: 5, most: 60 } as const;
/**
 * mm along the sector shaft from the face of a box to the middle of its arm: what a usual one reaches, and what one made longer
 * with a bearing beside the arm does at the most; common practice, no published source.
 */
export const SECTOR = { usual: 76.2, most: 114.3 } as const;
/** rad that a box may stand turned in plan, on a plate or bracket made for it; common practice, no published source. */
export const TURNED = 0.175;

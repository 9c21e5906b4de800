/** How the variants beside the open one are dashed, px of line and gap: on curves, on the board and where they are named. */
export const COMPARE_DASHES = {
  B: [7, 3],
  C: [2, 3],
  D: [9, 3, 2, 3],
} as const satisfies Record<string, readonly number[]>;

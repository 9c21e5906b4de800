/** On which part an end is that was described at the counter. */
export const WHOSE_CHOICES = [
  ['', 'not said'],
  ['column', 'the column'],
  ['box', 'the box'],
] as const;

/**
 * The places of the job, in its order. A place is one line here and its panel in `App.svelte`; only those that
 * work are listed, and with a single one no row is shown.
 */
export const PLACES = [
  { id: 'trace', name: 'Trace' },
  { id: 'layout', name: 'Layout' },
  { id: 'turn', name: 'Turn' },
  { id: 'shaft', name: 'Shaft' },
  { id: 'road', name: 'Road' },
  { id: 'sheet', name: 'Sheet' },
] as const;

export type PlaceId = (typeof PLACES)[number]['id'];

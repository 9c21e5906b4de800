/** What tables are called by. They stand alone, so that the contract of the API loads none of the tables. */
export const TABLE_NAMES = ['points', 'travel', 'turn', 'braking', 'forces', 'map'] as const;
/** How figures are written: whole, for programs; or for a spreadsheet, with the decimal sign that the reader's language has. */
export const NUMBERS = ['data', 'point', 'comma'] as const;
export type Numbers = (typeof NUMBERS)[number];

export type TableName = (typeof TABLE_NAMES)[number];

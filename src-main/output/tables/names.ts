/** What tables are called by. They stand alone, so that the contract of the API loads none of the tables. */
export const TABLE_NAMES = ['points', 'travel', 'turn', 'braking', 'forces', 'map'] as const;
export type TableName = (typeof TABLE_NAMES)[number];

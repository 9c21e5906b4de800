export const TABLE_NAMES = ['points', 'travel', 'turn', 'map'] as const;
export type TableName = (typeof TABLE_NAMES)[number];

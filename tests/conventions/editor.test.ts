import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const read = (name: string) => readFileSync(join(root, name), 'utf8');

test('.editorconfig tells editors the format that biome.json checks', () => {
  const { indentStyle, indentWidth, lineWidth } = JSON.parse(read('biome.json')).formatter;
  const told = new Map(
    [...read('.editorconfig').matchAll(/^(\w+) = (.+)$/gm)].map(([, name, value]) => [name, value]),
  );
  expect(told.get('indent_style')).toBe(indentStyle);
  expect(told.get('indent_size')).toBe(String(indentWidth));
  expect(told.get('max_line_length')).toBe(String(lineWidth));
  // What biome.json leaves unsaid is its own usage: lines end as on Unix, the last one too.
  expect(told.get('end_of_line')).toBe('lf');
  expect(told.get('insert_final_newline')).toBe('true');
});

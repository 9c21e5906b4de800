import { expect, test } from 'vitest';
import { doubtWords } from '../../../src-renderer/panels/findings/doubt-words.ts';

test('a verdict that could be another within the doubt says so; one that could not says nothing', () => {
  // Limit 0.5: in order below it, attention up to 1, a stop above.
  expect(doubtWords({ worst: 0.45, doubt: 0.1 }, 0.5)).toMatch(/^± 0\.10° from measuring/);
  expect(doubtWords({ worst: 0.95, doubt: 0.1 }, 0.5)).toMatch(/^± 0\.10° from measuring/);
  expect(doubtWords({ worst: 0.75, doubt: 0.1 }, 0.5)).toBe('');
  expect(doubtWords({ worst: 3.8, doubt: 0.4 }, 0.5)).toBe('');
  expect(doubtWords({ worst: 0.1, doubt: 0.39 }, 0.5)).toBe('');
});

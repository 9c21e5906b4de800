import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';
import { isPart, PARTS } from './parts.ts';

const part = process.env['MUTANTS_PART'] ?? '';
if (!isPart(part)) throw new Error(`MUTANTS_PART names no part: "${part}". Start this by npm run mutants.`);

/** The tests that one part's mutants are given: Stryker runs of them those that reach the mutant. */
export default defineConfig({
  root: resolve(import.meta.dirname, '../..'),
  test: { include: [...PARTS[part].tests], testTimeout: 30_000, benchmark: { include: [] } },
});

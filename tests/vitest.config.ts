import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

const root = resolve(import.meta.dirname, '..');
const fast = ['unit', 'reference', 'contract', 'durability', 'conventions', 'types'];

export default defineConfig({
  root,
  test: {
    reporters: ['default', resolve(import.meta.dirname, 'support/tally-reporter.ts')],
    globalSetup: [resolve(import.meta.dirname, 'support/require-node.ts')],
    projects: [
      {
        root,
        test: {
          name: 'core',
          include: fast.map((folder) => `tests/${folder}/**/*.test.ts`),
          testTimeout: 120_000,
          benchmark: { include: [] },
        },
      },
      {
        root,
        test: {
          name: 'bench',
          include: [],
          benchmark: { include: ['tests/bench/**/*.bench.ts'] },
          globalSetup: [resolve(import.meta.dirname, 'support/build-once.ts')],
          testTimeout: 300_000,
          hookTimeout: 60_000,
          fileParallelism: false,
          // Node runs the sources itself: the test runner's own module wrapper would be most of what is timed.
          experimental: { viteModuleRunner: false, nodeLoader: false },
        },
      },
      {
        root,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: [
            resolve(import.meta.dirname, 'support/build-once.ts'),
            resolve(import.meta.dirname, 'support/shared-browser.ts'),
          ],
          testTimeout: 120_000,
          hookTimeout: 60_000,
          // What is waited for comes late on a busy machine.
          expect: { poll: { timeout: 15_000 } },
          // One browser at a time: these machines are small, and a drag under load is another drag. For the same reason a
          // test that did not come to its end is tried once more; what is wrong fails twice.
          fileParallelism: false,
          retry: 1,
          benchmark: { include: [] },
        },
      },
    ],
  },
});

import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';
import { quickFolder } from './support/quick-folder.ts';
import { SLOWNESS } from './support/slow-machine.ts';

const root = resolve(import.meta.dirname, '..');
const support = (file: string) => resolve(import.meta.dirname, 'support', file);
const within = (...folders: string[]) => folders.map((folder) => `tests/${folder}/**/*.test.ts`);

export default defineConfig({
  root,
  test: {
    reporters: ['default', support('tally-reporter.ts')],
    globalSetup: [support('require-node.ts')],
    // Left to itself the runner leaves one core out, and of two that is half the machine.
    maxWorkers: '100%',
    projects: [
      {
        root,
        test: {
          name: 'core',
          // Sums and words alone: they leave nothing behind in their process, so that what one file has loaded, and the
          // sheets it has printed, serve the next.
          include: within('unit', 'conventions', 'reference', 'thorough'),
          isolate: false,
          env: { TMPDIR: quickFolder() },
          testTimeout: 120_000,
          benchmark: { include: [] },
        },
      },
      {
        root,
        test: {
          name: 'hosts',
          // Programs, folders, ports: each file in a process of its own.
          include: within('contract', 'durability', 'types'),
          testTimeout: 120_000,
          // Work in threads and other programs takes its time on a busy machine.
          expect: { poll: { timeout: 15_000 } },
          benchmark: { include: [] },
        },
      },
      {
        root,
        test: {
          name: 'bench',
          include: [],
          benchmark: { include: ['tests/bench/**/*.bench.ts'] },
          globalSetup: [support('build-once.ts'), support('shared-browser.ts')],
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
          include: within('browser'),
          env: { TMPDIR: quickFolder() },
          globalSetup: [support('build-once.ts'), support('shared-browser.ts')],
          testTimeout: 120_000 * SLOWNESS,
          hookTimeout: 60_000 * SLOWNESS,
          // What is waited for comes late on a busy machine.
          expect: { poll: { timeout: 15_000 * SLOWNESS } },
          // After the others, two files at a time however large the machine: a drag under load is another drag. For the
          // same reason a test that did not come to its end is tried once more; what is wrong fails twice.
          sequence: { groupOrder: 1 },
          maxWorkers: Math.min(2, availableParallelism()),
          retry: 1,
          benchmark: { include: [] },
        },
      },
    ],
  },
});

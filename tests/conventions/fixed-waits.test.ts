import { globSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

/** A wait of a fixed time, however it is written: too short on a busy machine, too long on an idle one. */
const FIXED_WAIT = /\bwaitForTimeout\(|(?<![.\w])setTimeout\(|timers\/promises|Atomics\.wait\(|\bsleep [\d.]/;

/** Files in which time is what is tested, or is kept by a clock of the test's own; and why. */
const ALLOWED: Readonly<Record<string, string>> = {
  'tests/unit/document/save-queue.test.ts': 'the host answers after a while by a clock that the test turns',
  'tests/contract/loopback-program.test.ts':
    'a shell looks again and again for a file: it has no other way to wait',
  'tests/browser/handbook.test.ts': 'a slow disk is imitated: each file of the page is sent a while late',
  'tests/support/slow-machine.ts':
    'a slow machine is imitated, where one is asked for: what comes to the page comes late',
  'tests/soak/pause.ts': 'pauses as a person makes them are a part of what the soak does for hours',
};

/** The lines of a text that wait a fixed time. */
const waits = (text: string) => text.split('\n').filter((line) => FIXED_WAIT.test(line));

test('no test waits a fixed time: it waits for the thing', () => {
  const files = globSync('tests/**/*.ts', { cwd: root })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path !== 'tests/conventions/fixed-waits.test.ts');
  expect(files.length).toBeGreaterThan(150);
  const found = files.filter((path) => waits(readFileSync(join(root, path), 'utf8')).length > 0);
  expect(found.sort()).toEqual(Object.keys(ALLOWED).sort());
});

test.each([
  'await page.waitForTimeout(200);',
  'await new Promise((done) => setTimeout(done, 50));',
  "import { setTimeout as wait } from 'node:timers/promises';",
  'Atomics.wait(cell, 0, 0, 100);',
  "execFileSync('sh', ['-c', 'sleep 0.1']);",
])('%s is found', (line) => {
  expect(waits(line)).toEqual([line]);
});

test.each([
  'await framesDrawn(page, 12);',
  "vi.useFakeTimers({ toFake: ['setTimeout'] });",
  'socket.setTimeout(2000, () => socket.destroy());',
  'context.setDefaultTimeout(PATIENCE);',
])('%s is no such wait', (line) => {
  expect(waits(line)).toEqual([]);
});

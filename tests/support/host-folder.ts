import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A new folder; removing it is the caller's. */
export function newFolder(within = tmpdir()): string {
  return realpathSync(mkdtempSync(join(within, 'toeboard-test-')));
}

export function removeFolder(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
}

/** A folder of its own for one test, gone after it. */
export function testFolder(within?: string): string {
  const folder = newFolder(within);
  onTestFinished(() => removeFolder(folder));
  return folder;
}

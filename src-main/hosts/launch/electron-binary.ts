import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { failed, type Outcome, succeeded } from '../../../shared-math/outcome.ts';

/**
 * Where Electron's binary is, or in one clause why there is none. Looked up by hand: the package's own entry would
 * begin to download it.
 */
export function electronBinary(root: string): Outcome<string, string> {
  const folder = join(root, 'node_modules', 'electron');
  if (!existsSync(folder)) return failed('Electron is not installed');
  try {
    const name = readFileSync(join(folder, 'path.txt'), 'utf8').trim();
    const path = join(folder, 'dist', name);
    return name !== '' && existsSync(path) ? succeeded(path) : failed("Electron's binary is not there");
  } catch {
    return failed("Electron's binary has not been downloaded");
  }
}

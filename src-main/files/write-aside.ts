import { randomBytes } from 'node:crypto';
import { open, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/**
 * Writes a file whole or not at all: aside under another name in the same folder, down to the disk, then renamed
 * over. `mode` stands against whatever mask this process has. Whatever fails, a former file of that name stays as it was and nothing is left lying about.
 */
export async function writeAside(path: string, content: string | Uint8Array, mode?: number): Promise<void> {
  const there = await stat(path).catch(() => undefined);
  // A rename would put a file in a device's or a pipe's place.
  if (there && !there.isFile() && !there.isDirectory())
    throw Object.assign(new Error(`${path} is no file`), { code: 'ENXIO' });
  const aside = join(dirname(path), `.${basename(path)}.${randomBytes(6).toString('hex')}.partial`);
  try {
    const file = await open(aside, 'wx');
    try {
      await file.writeFile(content);
      if (mode !== undefined) await file.chmod(mode);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(aside, path);
  } catch (error) {
    await rm(aside, { force: true });
    throw error;
  }
}

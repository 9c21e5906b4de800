import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { programFolder, rendererFolder } from './program-folder.ts';

/** A picture of the handbook: its PNG, and its size in pixels as its header says it (ISO/IEC 15948). */
export interface PictureFile {
  readonly png: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** Where the handbook's pictures lie: beside the sources, or in the built board. */
function picturesFolder(): string {
  const source = join(programFolder(), 'src-renderer/public/handbook');
  return existsSync(source) ? source : join(rendererFolder(), 'handbook');
}

/** The picture of that name; undefined if there is none. */
export function handbookPicture(file: string): PictureFile | undefined {
  const path = join(picturesFolder(), `${file}.png`);
  if (!/^[a-z-]+$/.test(file) || !existsSync(path)) return undefined;
  const png = readFileSync(path);
  return { png, width: png.readUInt32BE(16), height: png.readUInt32BE(20) };
}

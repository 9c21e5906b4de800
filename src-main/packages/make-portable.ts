import '../require-node.cjs';
import { join, resolve } from 'node:path';
import { programFolder } from '../files/program-folder.ts';
import { build, needsBuild } from '../hosts/launch/build.ts';
import { layPortable } from './portable.ts';

// npm run portable [-- FOLDER]: a folder that runs wherever it is carried to, on systems like this one.

const root = programFolder();
if (needsBuild(root) && !(await build(root))) process.exit(1);
try {
  const { folder } = layPortable(root, resolve(process.argv[2] ?? join(root, 'out', 'packages')));
  console.log(`Laid: ${folder}`);
} catch (error) {
  console.error(`No portable folder is made: ${error instanceof Error ? error.message : error}.`);
  process.exit(1);
}

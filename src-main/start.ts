// First of all: what follows may not load on an old Node.
import './require-node.cjs';
import { join } from 'node:path';
import { programFolder } from './files/program-folder.ts';
import { build, needsBuild } from './hosts/launch/build.ts';
import { electronBinary } from './hosts/launch/electron-binary.ts';
import { runHost } from './hosts/launch/run-host.ts';

// npm start: builds what is out of date, then opens the board in Electron, or where that cannot be in a browser.

const root = programFolder();
if (needsBuild(root)) {
  console.log('Building the board…');
  if (!(await build(root))) {
    console.error('Toeboard cannot be started: the build above has failed.');
    process.exit(1);
  }
}

/** Opens the board in Electron and stays until it is closed; gives the reason if it did not come up. */
async function openInElectron(): Promise<string> {
  const binary = electronBinary(root);
  if (!binary.ok) return binary.failure;
  // Started by the superuser, Chromium refuses to run in its sandbox.
  const asRoot = process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  // The folder's package.json names the entry.
  const end = await runHost(binary.value, [...asRoot, root]);
  if (end.failure === undefined) process.exit(end.code);
  return `Electron does not start: ${end.failure}`;
}

console.log(`${await openInElectron()}; the board opens in a browser instead.`);
const end = await runHost(process.execPath, [join(root, 'out', 'main', 'loopback-main.js'), '--reopen']);
process.exit(end.code);

import '../require-node.cjs';
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { programFolder } from '../files/program-folder.ts';
import { build, needsBuild } from '../hosts/launch/build.ts';
import { builderConfig } from './builder-config.ts';
import { pageOnlyPackages } from './runtime-packages.ts';

/*
 * npm run package: an installer for this system, by electron-builder. That program is not among the packages of this one: it is
 * 93 MB of 279 packages that nobody needs to work on the board, and fetches Electron from the network when it runs.
 */

/** The version that the configuration was held against. */
const BUILDER = '26.17.0';

const NEEDS = `npm run package makes an installer for the system that it runs on: Windows on Windows, macOS on macOS, Linux on Linux.
It needs
  - electron-builder: npm install --no-save electron-builder@${BUILDER}
  - the network, the first time: it fetches Electron (about 110 MB) and the tools for installers
  - to be trusted by others' systems, a certificate of your own to sign with: without one, Windows and macOS warn whoever opens it
Without all that, npm run portable makes a folder that runs where it is carried to.`;

const root = programFolder();
const builder = join(root, 'node_modules', 'electron-builder', 'cli.js');
if (!existsSync(builder)) {
  console.error(`electron-builder is not installed.\n${NEEDS}`);
  process.exit(1);
}
console.log(NEEDS);
if (needsBuild(root) && !(await build(root))) process.exit(1);

const folder = join(root, 'out', 'packages', 'resources');
mkdirSync(folder, { recursive: true });
const { Resvg } = await import('@resvg/resvg-js');
const drawing = readFileSync(join(root, 'src-renderer', 'public', 'favicon.svg'), 'utf8');
const icon = join(folder, 'icon.png');
writeFileSync(icon, new Resvg(drawing, { fitTo: { mode: 'width', value: 1024 } }).render().asPng());
const config = join(folder, 'electron-builder.json');
writeFileSync(config, JSON.stringify(builderConfig(root, icon, pageOnlyPackages(root)), null, 2));

spawn(process.execPath, [builder, '--config', config], { cwd: root, stdio: 'inherit' }).once(
  'exit',
  (code) => {
    if (code !== 0)
      console.error(`No installer is made: electron-builder has failed, as said above.\n${NEEDS}`);
    process.exit(code ?? 1);
  },
);

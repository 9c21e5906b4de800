import { chmodSync, cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { isNeeded, runtimePackages } from './runtime-packages.ts';

/** What of the project goes along as it is. */
const OWN = ['out/main', 'out/renderer', 'projects', 'NOTICE', 'README.md', 'CHANGELOG.md'];

interface Launcher {
  readonly name: string;
  readonly text: string;
}

const SH = (file: string, args: string) => `#!/bin/sh
# Beside a folder named "data" the cars are kept there, else in the usual place of this system.
here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd)
if [ -z "$TOEBOARD_DATA" ] && [ -d "$here/data" ]; then TOEBOARD_DATA="$here/data"; export TOEBOARD_DATA; fi
exec "$here/runtime/node" "$here/program/out/main/${file}" ${args}
`;

const CMD = (file: string, args: string) => `@echo off
rem Beside a folder named "data" the cars are kept there, else in the usual place of this system.
if not defined TOEBOARD_DATA if exist "%~dp0data\\" set "TOEBOARD_DATA=%~dp0data"
"%~dp0runtime\\node.exe" "%~dp0program\\out\\main\\${file}" ${args}
`;

function launchers(platform: NodeJS.Platform): readonly Launcher[] {
  if (platform === 'win32')
    return [
      { name: 'Open the board.cmd', text: CMD('loopback-main.js', '--reopen').replaceAll('\n', '\r\n') },
      { name: 'toeboard.cmd', text: CMD('command-line.js', '%*').replaceAll('\n', '\r\n') },
    ];
  // A Mac runs a file by double click in its terminal if it is named so.
  const board = platform === 'darwin' ? 'Open the board.command' : 'open-the-board';
  return [
    { name: board, text: SH('loopback-main.js', '--reopen') },
    { name: 'toeboard', text: SH('command-line.js', '"$@"') },
  ];
}

const readMe = (board: string) => `Toeboard, to be carried along: nothing is installed.

To open the board: start "${board}". It opens a window by the Chromium, Chrome or Edge of this machine, or says in its terminal
which address to open in a browser. Started once more, it opens the board of the program that runs again.

The command line: "toeboard --help" in this folder.

Cars are kept in the usual place for a program's data on this machine. To keep them in this folder, on a stick for example,
make a folder named "data" here before the first start.

Steering parts fail dangerously, and people die of it. The board measures geometry; it certifies nothing. Follow your local
codes, the makers of the parts, and licensed practice. Licences of all that is in here: program/NOTICE.
`;

export interface Portable {
  readonly folder: string;
  /** The file that opens the board. */
  readonly board: string;
  /** The file that is the command line. */
  readonly command: string;
}

/**
 * Lays the built program at `root`, the Node that runs this and the packages that both need into one folder that runs from
 * wherever it is carried to. For this system alone. A folder that stands there already is replaced if it is one of these.
 */
export function layPortable(root: string, within: string): Portable {
  if (!existsSync(join(root, 'out', 'main', 'command-line.js'))) throw new Error('the program is not built');
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  const system = `${process.platform}-${process.arch}`;
  const folder = join(within, `toeboard-${version}-${system}`);
  if (existsSync(folder) && !existsSync(join(folder, 'program', 'NOTICE')))
    throw new Error(`${folder} is there already and is not a folder of this program`);
  // Data of the person's own, if any, stays: only what is laid here is laid anew.
  for (const part of ['program', 'runtime']) rmSync(join(folder, part), { recursive: true, force: true });
  const program = join(folder, 'program');
  mkdirSync(join(folder, 'runtime'), { recursive: true });

  for (const name of OWN) cpSync(join(root, name), join(program, name), { recursive: true });
  const { name, type, license } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Record<
    string,
    string
  >;
  writeFileSync(
    join(program, 'package.json'),
    `${JSON.stringify({ name, version, private: true, license, type }, null, 2)}\n`,
  );
  for (const { folder: from, place } of runtimePackages(root))
    cpSync(from, join(program, place), {
      recursive: true,
      dereference: true,
      filter: (path) => {
        const inside = relative(from, path);
        // What lies within it has a place of its own.
        return !/^node_modules(?:[\\/]|$)/.test(inside) && isNeeded(place, inside, system);
      },
    });

  const node = join(folder, 'runtime', process.platform === 'win32' ? 'node.exe' : 'node');
  cpSync(process.execPath, node, { dereference: true });
  chmodSync(node, 0o755);
  const [board, command] = launchers(process.platform).map(({ name: file, text }) => {
    const path = join(folder, file);
    writeFileSync(path, text);
    chmodSync(path, 0o755);
    return path;
  });
  if (!board || !command) throw new Error('there is no launcher for this system');
  writeFileSync(join(folder, 'READ ME.txt'), readMe(relative(folder, board)));
  return { folder, board, command };
}

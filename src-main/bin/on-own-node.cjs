// Runs a file of the built program on the Node that comes along as a package, whichever Node runs this: in old syntax, as
// that one may be old. Where no Node came along the present one has to do, if it is new enough.
const { spawn } = require('node:child_process');
const { existsSync, readdirSync } = require('node:fs');
const { dirname, join } = require('node:path');

const program = join(__dirname, '..', '..');

/** The packages' Node for this system, looked for beside this package as npm lays it; undefined if none came along. */
function broughtNode() {
  const system = `${process.platform === 'win32' ? 'win' : process.platform}-${process.arch}`;
  for (let folder = program; ; folder = dirname(folder)) {
    const modules = join(folder, 'node_modules');
    if (existsSync(modules))
      for (const name of readdirSync(modules))
        if (name === `node-${system}` || name === `node-bin-${system}`) {
          const path = join(modules, name, 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
          if (existsSync(path)) return path;
        }
    if (folder === dirname(folder)) return undefined;
  }
}

exports.runOnOwnNode = (file, args) => {
  const path = join(program, 'out', 'main', file);
  if (!existsSync(path)) {
    process.stderr.write('Toeboard is not built: run npm run build first.\n');
    process.exit(1);
  }
  const node = broughtNode();
  if (!node) require('../require-node.cjs');
  const child = spawn(node || process.execPath, [path].concat(args), { stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  child.once('error', (error) => {
    process.stderr.write(`Toeboard cannot be started: ${error.message}\n`);
    process.exit(1);
  });
  child.once('exit', (code, signal) => process.exit(signal ? 1 : code));
};

// Loaded before the program. Its clock stands as far from the system's as a file says. Timers and SQLite's own clock are
// not touched; the program asks neither for the time.
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

const path = process.env.TOEBOARD_SOAK_CLOCK;
const SystemDate = Date;
const LOOK_EVERY = 200;
let offset = 0;
let looked = Number.NEGATIVE_INFINITY;

function shift() {
  if (performance.now() - looked > LOOK_EVERY) {
    looked = performance.now();
    try {
      offset = Number(readFileSync(path, 'utf8')) || 0;
    } catch {
      // In the middle of being written: as before.
    }
  }
  return offset;
}

globalThis.Date = class extends SystemDate {
  constructor(...given) {
    if (given.length === 0) super(SystemDate.now() + shift());
    else super(...given);
  }
  static now() {
    return SystemDate.now() + shift();
  }
};

// Asked by a signal it says how many bytes are in use once what is not needed is swept away: what the system gives the
// process says little, as the engine keeps what it once took.
setFlagsFromString('--expose-gc');
const sweep = runInNewContext('gc');
process.on('SIGUSR2', () => {
  sweep();
  const { heapUsed, external } = process.memoryUsage();
  const answer = process.env.TOEBOARD_SOAK_USED;
  writeFileSync(`${answer}.partial`, String(heapUsed + external));
  renameSync(`${answer}.partial`, answer);
});

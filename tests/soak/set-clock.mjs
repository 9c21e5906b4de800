// Loaded before the program: its clock stands as far from the system's as a file says. Timers and SQLite's own clock are
// not touched; the program asks neither for the time.
import { readFileSync } from 'node:fs';

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

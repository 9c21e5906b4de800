import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { pause } from './pause.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const BUILT = join(ROOT, 'out/main/loopback-main.js');
const PRELOAD = pathToFileURL(resolve(import.meta.dirname, 'watched-program.mjs')).href;

/** Addresses, and the one line of each call that met a full disk. */
const EXPECTED =
  /^(Toeboard: |To open it once more|No window is opened|[\w.]+: the disk (is full|does not read or write))/;

/** Milliseconds within which a program has to print its address. */
const START_MOST = 30_000;
/** Milliseconds after a restart in which a page may still complain that nobody answered. */
const STILL_DOWN = 15_000;

/** The built program as a process that can be killed and started again on the same data. */
export class Program {
  readonly folder: string;
  readonly #clockFile: string;
  readonly #usedFile: string;
  #child: ChildProcess | undefined;
  #said = '';
  readonly #used = new Set<string>();
  #downUntil = 0;
  /** How often it has been started. */
  lives = 0;

  constructor(folder: string, clockFile: string) {
    this.folder = folder;
    this.#clockFile = clockFile;
    this.#usedFile = `${clockFile}-used`;
    this.setClock(0);
  }

  /** Milliseconds that its clock stands ahead of the system's; negative behind. Followed within a fifth of a second. */
  setClock(offset: number): void {
    writeFileSync(this.#clockFile, String(offset));
  }

  /** Starts it and waits until it answers. */
  async start(): Promise<void> {
    const child = spawn(process.execPath, ['--import', PRELOAD, BUILT], {
      cwd: ROOT,
      // A pipe for standard input: the program ends when this one does.
      stdio: ['pipe', 'pipe', 'pipe'],
      env: {
        ...process.env,
        TOEBOARD_DATA: this.folder,
        TOEBOARD_NO_WINDOW: '1',
        TOEBOARD_SOAK_CLOCK: this.#clockFile,
        TOEBOARD_SOAK_USED: this.#usedFile,
      },
    });
    this.#child = child;
    this.#said = '';
    for (const stream of [child.stdout, child.stderr])
      stream?.on('data', (chunk: Buffer) => {
        this.#said += chunk.toString();
      });
    this.lives += 1;
    await this.#says(/^Toeboard: \S+/m);
    this.#downUntil = Date.now() + STILL_DOWN;
  }

  async #says(pattern: RegExp): Promise<void> {
    for (const until = Date.now() + START_MOST; Date.now() < until; await pause(20)) {
      if (pattern.test(this.#said)) return;
      if (this.#child?.exitCode !== null) break;
    }
    throw new Error(`the program did not say ${pattern}: ${this.#said.trim()}`);
  }

  /** The newest address that it has printed, good for one more page. */
  async onceMore(): Promise<string> {
    for (const until = Date.now() + START_MOST; Date.now() < until; await pause(20)) {
      const address = this.#said.match(/http:\S+#code=\S+/g)?.at(-1);
      if (!address || this.#used.has(address)) continue;
      this.#used.add(address);
      return address;
    }
    throw new Error(`the program has printed no address for one more page: ${this.#said.trim()}`);
  }

  /** All that it has said since it was started that was not to be expected. */
  get complaints(): string[] {
    return this.#said.split('\n').filter((line) => line.trim() !== '' && !EXPECTED.test(line));
  }

  async kill(): Promise<void> {
    const child = this.#child;
    this.#child = undefined;
    this.#downUntil = Number.POSITIVE_INFINITY;
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    const ended = new Promise((done) => child.once('close', done));
    child.kill('SIGKILL');
    await ended;
  }

  /** Whether a page may say that nobody answers. */
  get mayBeSilent(): boolean {
    return Date.now() < this.#downUntil;
  }

  get pid(): number | undefined {
    return this.#child?.pid;
  }

  /** Bytes in use after all that is not needed was swept away. */
  async used(): Promise<number | undefined> {
    rmSync(this.#usedFile, { force: true });
    this.#child?.kill('SIGUSR2');
    for (const until = Date.now() + START_MOST; Date.now() < until; await pause(20))
      if (existsSync(this.#usedFile)) return Number(readFileSync(this.#usedFile, 'utf8'));
    return undefined;
  }

  /** Bytes that the system gives it; undefined where the system does not say. */
  get memory(): number | undefined {
    const path = `/proc/${this.pid}/status`;
    if (!existsSync(path)) return undefined;
    const kB = readFileSync(path, 'utf8').match(/^VmRSS:\s+(\d+) kB/m)?.[1];
    return kB === undefined ? undefined : Number(kB) * 1024;
  }

  /** Files, sockets and pipes that it holds open; undefined where the system does not say. */
  get handles(): number | undefined {
    const path = `/proc/${this.pid}/fd`;
    return existsSync(path) ? readdirSync(path).length : undefined;
  }

  /** Bytes of all files in its data folder whose name has that beginning. */
  bytesOf(beginning: string): number {
    return readdirSync(this.folder)
      .filter((name) => name.startsWith(beginning))
      .reduce(
        (sum, name) => sum + (statSync(join(this.folder, name), { throwIfNoEntry: false })?.size ?? 0),
        0,
      );
  }
}

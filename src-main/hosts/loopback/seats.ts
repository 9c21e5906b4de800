import { randomBytes } from 'node:crypto';
import { chmodSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { parseJson } from '../../../shared-math/outside/index.ts';

/** Where the pages of one run look for their program: its port, and the secret that both know each other by. */
export interface Seat {
  readonly port: number;
  readonly secret: string;
}

/** Several programs may run on one data folder, each on a port of its own; more than these are forgotten. */
const SEATS_MOST = 4;
export const SEATS_FILE = 'reconnect.json';

const seatsSchema = z
  .array(
    z.strictObject({
      port: z.number().int().min(1024).max(65_535),
      secret: z.string().regex(/^[\w-]{43}$/),
    }),
  )
  .max(SEATS_MOST);

export function newSecret(): string {
  return randomBytes(32).toString('base64url');
}

/** Others may have read it, and could then pass for a page of ours. */
function isPrivate(path: string): boolean {
  return process.platform === 'win32' || (statSync(path).mode & 0o077) === 0;
}

/** The seats of earlier runs on this data folder, newest first; none where the file is missing, broken or open to others. */
export function seatsOf(dataFolder: string): readonly Seat[] {
  const path = join(dataFolder, SEATS_FILE);
  try {
    if (!isPrivate(path)) return [];
    const kept = parseJson(readFileSync(path, 'utf8'));
    const seats = seatsSchema.safeParse(kept.ok ? kept.value : undefined);
    return seats.success ? seats.data : [];
  } catch {
    return [];
  }
}

/**
 * Keeps the seat that a run has taken, so that the next run takes up its pages. For its owner's eyes alone. That it
 * cannot be kept is no reason not to run.
 */
export function keepSeat(dataFolder: string, seat: Seat): void {
  const path = join(dataFolder, SEATS_FILE);
  const others = seatsOf(dataFolder).filter(({ port }) => port !== seat.port);
  const aside = `${path}.${process.pid}.partial`;
  try {
    writeFileSync(aside, JSON.stringify([seat, ...others].slice(0, SEATS_MOST)), { mode: 0o600 });
    chmodSync(aside, 0o600);
    renameSync(aside, path);
  } catch {
    rmSync(aside, { force: true });
  }
}

import { createHmac, randomUUID, timingSafeEqual } from 'node:crypto';
import { type Seat, seatsOf } from './seats.ts';

/** ms. A program on this machine that has not answered by then is busy with something else, or hangs. */
const ANSWER_WITHIN = 2000;

/** How a running program was opened again: by a window of its own, or at an address that is good for one page. */
export type Reopened = { readonly window: true } | { readonly window: false; readonly address: string };

async function post(seat: Seat, path: string, body: object, headers: Record<string, string> = {}) {
  const origin = `http://127.0.0.1:${seat.port}`;
  const response = await fetch(`${origin}${path}`, {
    method: 'POST',
    headers: { origin, 'content-type': 'application/json', ...headers },
    body: JSON.stringify(body),
    signal: AbortSignal.timeout(ANSWER_WITHIN),
  });
  return response.ok ? ((await response.json()) as Record<string, unknown>) : undefined;
}

/** Whether who listens there is a program on our data folder: another one would be handed the secret with the next call. */
async function isOurs(seat: Seat): Promise<boolean> {
  const nonce = randomUUID();
  const proof = (await post(seat, '/proof', { nonce }))?.['proof'];
  const expected = createHmac('sha256', seat.secret).update(`127.0.0.1:${seat.port} ${nonce}`).digest('hex');
  return (
    typeof proof === 'string' &&
    proof.length === expected.length &&
    timingSafeEqual(Buffer.from(proof), Buffer.from(expected))
  );
}

async function reopenAt(seat: Seat): Promise<Reopened | undefined> {
  try {
    if (!(await isOurs(seat))) return undefined;
    const answer = await post(seat, '/again', {}, { authorization: `Bearer ${seat.secret}` });
    if (answer?.['window'] === true) return { window: true };
    const address = answer?.['address'];
    return typeof address === 'string' ? { window: false, address } : undefined;
  } catch {
    // Nobody there, or nobody who answers.
    return undefined;
  }
}

/** Has a program that runs on this data folder already open its board again; undefined if there is none, or only an older build's. */
export async function reopenRunning(dataFolder: string): Promise<Reopened | undefined> {
  for (const seat of seatsOf(dataFolder)) {
    const reopened = await reopenAt(seat);
    if (reopened) return reopened;
  }
  return undefined;
}

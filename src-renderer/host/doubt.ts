/*
 * Whether the program at this page's address is still the one that gave the page its token. After a call that nobody
 * answered, another program may have come to stand there, and would be handed the token with the next call. So it is
 * first asked to prove that it knows the token: by a keyed hash (HMAC, RFC 2104) of a word made up for it.
 */

let doubted = false;

export function raise(): void {
  doubted = true;
}

export function stands(): boolean {
  return doubted;
}

function hex(bytes: ArrayBuffer): string {
  return [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

async function expected(token: string, nonce: string): Promise<string> {
  const encoder = new TextEncoder();
  const algorithm = { name: 'HMAC', hash: 'SHA-256' };
  const key = await crypto.subtle.importKey('raw', encoder.encode(token), algorithm, false, ['sign']);
  return hex(await crypto.subtle.sign('HMAC', key, encoder.encode(`${location.host} ${nonce}`)));
}

/** Whether the program there knows the token; if so, the doubt is over. Throws if nobody answers. */
export async function settle(token: string): Promise<boolean> {
  const nonce = crypto.randomUUID();
  const response = await fetch('/proof', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ nonce }),
  });
  const answer: unknown = await response.json().catch(() => null);
  const proof = typeof answer === 'object' && answer !== null && 'proof' in answer ? answer.proof : undefined;
  if (proof !== (await expected(token, nonce))) return false;
  doubted = false;
  return true;
}

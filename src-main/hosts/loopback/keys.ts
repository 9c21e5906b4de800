import { createHmac, timingSafeEqual } from 'node:crypto';
import { newSecret } from './seats.ts';

/**
 * The codes and the token of one run. A code stands in an address, which is printed and passes through a browser, so
 * each is good for one exchange, and none outlives the next one; the token that it buys is in the memory of pages and, for
 * the next run to know them by, in a file for its owner alone (seats.ts).
 */
export function createKeys(secret: string) {
  const token = Buffer.from(`Bearer ${secret}`);
  const codes = new Set<string>();
  return {
    newCode(): string {
      const code = newSecret();
      codes.add(code);
      return code;
    },
    /** The token, once for each code. Every code that was handed out before lapses with it: a page has come to life. */
    exchange(code: unknown): string | undefined {
      if (typeof code !== 'string' || !codes.has(code)) return undefined;
      codes.clear();
      return secret;
    },
    /** Proves to a page that this program, at this address, knows its token, without telling it. */
    proof(host: string, nonce: string): string {
      return createHmac('sha256', secret).update(`${host} ${nonce}`).digest('hex');
    },
    /** Whether an authorization header holds the token. */
    admits(header: string | undefined): boolean {
      const given = Buffer.from(header ?? '');
      return given.length === token.length && timingSafeEqual(given, token);
    },
  };
}

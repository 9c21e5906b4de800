import { randomBytes, timingSafeEqual } from 'node:crypto';

function secret(): string {
  return randomBytes(32).toString('base64url');
}

/**
 * The codes and the token of one run. A code stands in an address, which other users of the machine can see among
 * the browser's arguments, so each is good for one exchange; the token that it buys is only ever in a page's memory.
 */
export function createKeys() {
  const token = Buffer.from(`Bearer ${secret()}`);
  const codes = new Set<string>();
  return {
    newCode(): string {
      const code = secret();
      codes.add(code);
      return code;
    },
    /** The token, once for each code. */
    exchange(code: unknown): string | undefined {
      return typeof code === 'string' && codes.delete(code)
        ? token.toString().slice('Bearer '.length)
        : undefined;
    },
    /** Whether an authorization header holds the token. */
    admits(header: string | undefined): boolean {
      const given = Buffer.from(header ?? '');
      return given.length === token.length && timingSafeEqual(given, token);
    },
  };
}

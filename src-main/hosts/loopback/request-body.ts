import type { IncomingMessage } from 'node:http';

/** Bytes. The largest call brings a whole-car file of ten million characters, quoted and in UTF-8. */
export const BODY_MAX = 32_000_000;

/**
 * The body of a request as text; undefined if it is larger than a call can be. Read to its end even then, without
 * being kept: a sender cut off in the middle would never see the reason.
 */
export async function bodyText(request: IncomingMessage): Promise<string | undefined> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length <= BODY_MAX) chunks.push(chunk);
    else chunks.length = 0;
  }
  return length <= BODY_MAX ? Buffer.concat(chunks).toString('utf8') : undefined;
}

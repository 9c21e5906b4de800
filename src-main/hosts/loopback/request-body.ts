import type { IncomingMessage } from 'node:http';

/** Bytes. The largest call brings a whole-car file with its photos. */
export const BODY_MAX = 96_000_000;

/**
 * The body of a request; undefined if it is larger than it may be. Read to its end even then, without
 * being kept: a sender cut off in the middle would never see the reason.
 */
export async function bodyBytes(
  request: IncomingMessage,
  most: number = BODY_MAX,
): Promise<Buffer | undefined> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length <= most) chunks.push(chunk);
    else chunks.length = 0;
  }
  return length <= most ? Buffer.concat(chunks) : undefined;
}

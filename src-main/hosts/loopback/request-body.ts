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

/**
 * The body of a request by somebody who may be anybody; undefined as soon as it says or shows that it is larger than
 * it may be. What is still on its way then is let go by once the answer is written, so that its sender sees the reason.
 */
export function fewBytes(request: IncomingMessage, most: number): Promise<Buffer | undefined> {
  if (Number(request.headers['content-length'] ?? 0) > most) return Promise.resolve(undefined);
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    let length = 0;
    const take = (chunk: Buffer) => {
      length += chunk.length;
      if (length <= most) chunks.push(chunk);
      else {
        request.off('data', take);
        chunks.length = 0;
        resolve(undefined);
      }
    };
    request.on('data', take);
    request.once('end', () => resolve(Buffer.concat(chunks)));
    request.once('error', reject);
    request.once('close', () => reject(new Error('the page went away in the middle of its request')));
  });
}

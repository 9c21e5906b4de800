import { crc32, deflateRawSync, inflateRawSync } from 'node:zlib';

/**
 * A text as raw deflate (RFC 1951), the bytes of another text before it as the dictionary where there is one, and the
 * CRC-32 (ISO 3309) of the text itself: deflate without a header would unpack with a wrong dictionary in silence.
 */
export interface Packed {
  readonly packed: Buffer;
  readonly sum: number;
}

/** Bytes. Deflate looks back 32 KiB; beyond that a dictionary of the text's own length is out of its sight. */
export const DICTIONARY_MOST = 32_000;
/** Bytes. No stored text is longer, so that a damaged one cannot unpack into all the memory. */
const TEXT_MOST = 64_000_000;

/** Deflate's effort, 1 to 9. A text nearly all of which is in the dictionary needs little, and more takes twenty times as long. */
const EFFORT_WITH_DICTIONARY = 3;

export function pack(text: Buffer, dictionary?: Buffer): Packed {
  return {
    packed: deflateRawSync(text, dictionary ? { dictionary, level: EFFORT_WITH_DICTIONARY } : {}),
    sum: crc32(text),
  };
}

/** Returns undefined if the bytes are not those that were packed. */
export function unpack({ packed, sum }: Packed, dictionary?: Buffer): Buffer | undefined {
  try {
    const limits = { maxOutputLength: TEXT_MOST };
    const text = inflateRawSync(packed, dictionary ? { ...limits, dictionary } : limits);
    return crc32(text) === sum ? text : undefined;
  } catch {
    return undefined;
  }
}

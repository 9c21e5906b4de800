/** What can be held: a decoded picture. */
export interface Held {
  readonly width: number;
  readonly height: number;
  close(): void;
}

/** Pixels of all that is held, four bytes each: two pictures of 24 megapixels, or one that is larger by itself. */
export const HELD_PIXELS_MOST = 64e6;

/** Decoded pictures, the one asked for last kept longest, no more of them than memory should bear. */
export class HeldOriginals<Picture extends Held> {
  readonly #held = new Map<string, Picture>();

  get(key: string): Picture | undefined {
    const found = this.#held.get(key);
    if (found) {
      this.#held.delete(key);
      this.#held.set(key, found);
    }
    return found;
  }

  take(key: string, picture: Picture): void {
    this.#held.get(key)?.close();
    this.#held.delete(key);
    this.#held.set(key, picture);
    for (const [old, each] of this.#held) {
      if (old === key || this.pixels <= HELD_PIXELS_MOST) break;
      each.close();
      this.#held.delete(old);
    }
  }

  letGo(): void {
    for (const each of this.#held.values()) each.close();
    this.#held.clear();
  }

  get pixels(): number {
    let sum = 0;
    for (const { width, height } of this.#held.values()) sum += width * height;
    return sum;
  }
}

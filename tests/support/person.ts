import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/**
 * s. What a person takes for each thing done with hand and eye: Card, Moran and Newell, "The keystroke-level model for user
 * performance time with interactive systems", Communications of the ACM 23 (7), 1980 (from memory): a key of an average typist,
 * pointing, a press of the mouse's button, a hand from mouse to keys or back, and making up one's mind.
 */
const KEY = 0.28;
const POINT = 1.1;
const PRESS = 0.2;
const HAND = 0.4;
const MIND = 1.35;

/** A person before the board: what is done is counted, one for each thing clicked, chosen, typed or pressed, and how long it takes. */
export class Person {
  actions = 0;
  seconds = 0;
  readonly page: Page;
  /** Where the right hand is. */
  #at: 'mouse' | 'keys' = 'mouse';

  constructor(page: Page) {
    this.page = page;
  }

  #goes(to: 'mouse' | 'keys'): void {
    if (this.#at !== to) this.seconds += HAND;
    this.#at = to;
  }

  #points(): void {
    this.actions += 1;
    this.#goes('mouse');
    this.seconds += MIND + POINT + PRESS;
  }

  #keys(count: number): void {
    this.#goes('keys');
    this.seconds += count * KEY;
  }

  async click(name: string | RegExp): Promise<void> {
    this.#points();
    await this.page.getByRole('button', { name, exact: true }).click();
  }

  /** Types letter by letter and stays in the field: what is live needs no Enter. */
  async type(label: string, text: string): Promise<void> {
    this.#points();
    this.#keys(text.length);
    const field = this.page.getByLabel(label, { exact: true });
    await field.click();
    await field.pressSequentially(text);
  }

  /** Types into whatever has the keyboard, and leaves it with a key. */
  async types(text: string, key: string): Promise<void> {
    this.actions += 1;
    this.seconds += MIND;
    this.#keys(text.length + 1);
    await this.page.keyboard.type(text);
    await this.page.keyboard.press(key);
  }

  async presses(key: string): Promise<void> {
    this.actions += 1;
    this.seconds += MIND;
    this.#keys(1);
    await this.page.keyboard.press(key);
  }

  /** Opens a list of choices and takes one: two presses. */
  async choose(label: string, words: string): Promise<void> {
    this.#points();
    this.seconds += POINT + PRESS;
    await this.page.getByLabel(label, { exact: true }).selectOption({ label: words });
  }

  async reads(words: RegExp): Promise<void> {
    const headline = this.page.locator('.sheet .headline');
    await expect.poll(async () => (await headline.textContent())?.trim()).toMatch(words);
  }

  async kept(): Promise<void> {
    await this.page.locator('[data-kept="kept"]').waitFor();
  }
}

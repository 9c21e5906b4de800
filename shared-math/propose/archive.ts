import type { Choice } from './idea.ts';

interface Entry {
  readonly x: readonly number[];
  /** rad of bump steer there. */
  readonly worst: number;
  value: number;
}

/** Places nearer than this share of every choice count as one. */
const ALIKE = 0.12;
const MOST = 400;

/** The places of a search that keep all limits, in the order of a value that may change from one search to the next. */
export class Archive {
  private readonly choices: readonly Choice[];
  private entries: Entry[] = [];
  private asValue: ((x: readonly number[]) => number) | undefined;

  constructor(choices: readonly Choice[]) {
    this.choices = choices;
  }

  get size(): number {
    return this.entries.length;
  }

  add(x: readonly number[], worst: number): void {
    this.entries.push({ x: [...x], worst, value: this.asValue ? this.asValue(x) : worst });
    if (this.entries.length > MOST) {
      this.entries.sort((a, b) => a.value - b.value);
      this.entries.length = MOST / 2;
    }
  }

  /** From now on in the order of another value; of bump steer that is not wanted any more, the places go. */
  weighAnew(value: (x: readonly number[]) => number, wanted: (worst: number) => boolean = () => true): void {
    this.asValue = value;
    const left = this.entries.filter(({ worst }) => wanted(worst));
    if (left.length > 0) this.entries = left;
    for (const entry of this.entries) entry.value = value(entry.x);
  }

  /** The best places, least value first, each unlike those before it. */
  best(): (readonly number[])[] {
    const taken: Entry[] = [];
    for (const entry of this.entries.toSorted((a, b) => a.value - b.value)) {
      if (taken.length >= 8) break;
      if (taken.every((other) => this.isUnlike(entry.x, other.x))) taken.push(entry);
    }
    return taken.map(({ x }) => x);
  }

  private isUnlike(one: readonly number[], other: readonly number[]): boolean {
    return this.choices.some(
      ({ from, to }, i) =>
        to > from && Math.abs((one[i] as number) - (other[i] as number)) > ALIKE * (to - from),
    );
  }
}

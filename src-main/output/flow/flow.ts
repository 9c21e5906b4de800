import type { Area } from '../pens/papers.ts';
import type { PrintPen } from '../pens/print-pen.ts';
import type { Block } from './block.ts';
import type { PageFacts, PageFrame } from './page-frame.ts';

/** mm between columns. */
const GUTTER = 9;

/** What is not usual about a flow. */
interface FlowOptions {
  /** Areas of the page that is open already, to be filled before the next page is begun. */
  readonly first?: readonly Area[];
  /** mm that a column takes at the most. */
  readonly most?: number;
  /** Without ink: only to see how many pages it takes. */
  readonly trial?: boolean;
}

/** Puts blocks into the columns of pages, one after the other, and begins pages as they are needed. */
export class Flow {
  readonly #pageFrame: PageFrame;
  readonly #facts: PageFacts;
  readonly #count: number;
  readonly #note: string;
  readonly #first: readonly Area[];
  #columns: readonly Area[];
  #column = 0;
  #used = 0;
  #pages = 0;
  #leading: Block[] = [];
  readonly #trial: boolean;
  readonly #most: number;

  constructor(pageFrame: PageFrame, facts: PageFacts, columns: number, note = '', options: FlowOptions = {}) {
    this.#pageFrame = pageFrame;
    this.#facts = facts;
    this.#count = columns;
    this.#note = note;
    this.#most = options.most ?? Number.POSITIVE_INFINITY;
    this.#trial = options.trial ?? false;
    this.#first = options.first ?? [];
    this.#columns = this.#first;
    if (this.#first.length > 0) this.#pages = 1;
  }

  get pages(): number {
    return this.#pages;
  }

  put(...blocks: readonly Block[]): void {
    for (const block of blocks) {
      this.#leading.push(block);
      if (block.leads) continue;
      this.#place(this.#leading);
      this.#leading = [];
    }
  }

  /** mm left in the column. */
  get left(): number {
    return this.#area.height - this.#used;
  }

  /** Whether the column has room for these blocks, all of them. */
  takes(...blocks: readonly Block[]): boolean {
    const { width } = this.#area;
    const above = this.#used > 0 ? (blocks[0]?.above ?? 0) : 0;
    return above + heightOf(this.#pageFrame.pen, width, blocks) <= this.left;
  }

  /** The next block begins a column. */
  nextColumn(): void {
    if (this.#used > 0) this.#advance();
  }

  /** The column is one that was given, and a page's own may be taller. */
  get #given(): boolean {
    return this.#columns === this.#first;
  }

  #advance(): void {
    this.#used = 0;
    this.#column += 1;
    if (this.#column < this.#columns.length) return;
    this.#pages += 1;
    const area = !this.#trial
      ? this.#pageFrame.open(
          this.#pages > 1 ? { ...this.#facts, title: `${this.#facts.title}, continued` } : this.#facts,
          this.#note,
        )
      : this.#pageFrame.roomBelowTitle(this.#facts.lying);
    const width = (area.width - (this.#count - 1) * GUTTER) / this.#count;
    this.#columns = Array.from({ length: this.#count }, (_, i) => ({
      ...area,
      x: area.x + i * (width + GUTTER),
      width,
      height: Math.min(area.height, this.#most),
    }));
    this.#column = 0;
  }

  get #area(): Area {
    if (this.#columns.length === 0) this.#advance();
    return this.#columns[this.#column] as Area;
  }

  #paint(blocks: readonly Block[]): void {
    const { pen } = this.#pageFrame;
    for (const block of blocks) {
      const { x, y, width } = this.#area;
      if (this.#used > 0) this.#used += block.above ?? 0;
      if (!this.#trial) block.paint(pen, x, y + this.#used, width);
      this.#used += block.height(pen, width);
    }
  }

  /** A group of leading blocks and the one they lead to, in one column as far as can be. */
  #place(group: readonly Block[]): void {
    const { pen } = this.#pageFrame;
    const { width, height } = this.#area;
    const above = group.reduce(
      (sum, block, i) => sum + (i > 0 || this.#used > 0 ? (block.above ?? 0) : 0),
      0,
    );
    const tall = group.reduce((sum, block) => sum + block.height(pen, width), above);
    if (this.#used + tall <= height) {
      this.#paint(group);
      return;
    }
    const last = group[group.length - 1] as Block;
    const leading = group.slice(0, -1);
    const taken = tall - last.height(pen, width);
    const parts = last.split?.(pen, width, height - this.#used - taken);
    if (parts) {
      this.#paint([...leading, parts[0]]);
      this.#advance();
      this.#place([parts[1]]);
    } else if (this.#used > 0 || this.#given) {
      this.#advance();
      this.#place(group);
    } else this.#paint(group);
  }
}

/** mm by which columns are made longer until all fits. */
const LONGER = 3;

/** Columns that a page has at the most. */
const COLUMNS_MOST = 3;

/** Puts blocks into columns of like height, on as few pages as they take: one column more where that saves a page. */
export function flowEvenly(
  pageFrame: PageFrame,
  facts: PageFacts,
  columns: number,
  note: string,
  blocks: readonly Block[],
): void {
  const pagesAt = (most: number, count: number) => {
    const trial = new Flow(pageFrame, facts, count, note, { most, trial: true });
    trial.put(...blocks);
    return trial.pages;
  };
  const { height } = pageFrame.roomBelowTitle(facts.lying);
  const more = Math.min(columns + 1, Math.max(columns, COLUMNS_MOST));
  const count = pagesAt(height, more) < pagesAt(height, columns) ? more : columns;
  const pages = pagesAt(height, count);
  let most = height / 4;
  while (most < height && pagesAt(most, count) > pages) most += LONGER;
  new Flow(pageFrame, facts, count, note, { most }).put(...blocks);
}

/** Writes blocks one below the other in an area; answers where the next would begin, mm. */
export function stack(pen: PrintPen, area: Area, blocks: readonly Block[], from = area.y): number {
  let y = from;
  for (const block of blocks) {
    if (y > area.y) y += block.above ?? 0;
    block.paint(pen, area.x, y, area.width);
    y += block.height(pen, area.width);
  }
  return y;
}

/** mm that blocks take one below the other at a width. */
export function heightOf(pen: PrintPen, width: number, blocks: readonly Block[]): number {
  return blocks.reduce(
    (sum, block, i) => sum + block.height(pen, width) + (i > 0 ? (block.above ?? 0) : 0),
    0,
  );
}

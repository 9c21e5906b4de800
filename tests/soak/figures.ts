import type { CDPSession, Page } from 'playwright-core';
import { type Growth, judgeGrowth, type Reading, type Tolerance } from './growth.ts';
import { pause } from './pause.ts';
import type { Program } from './program.ts';

const MB = 1_000_000;

export type Figure =
  | 'heap'
  | 'listeners'
  | 'nodes'
  | 'shapes'
  | 'workers'
  | 'used'
  | 'memory'
  | 'handles'
  | 'database';

interface About {
  readonly words: string;
  readonly of: 'page' | 'program' | 'shop';
  readonly tolerance: Tolerance;
  /** Digits are not wanted by anybody. */
  readonly show: (value: number) => string;
}

const count = (value: number) => value.toFixed(0);
const size = (value: number) => `${(value / MB).toFixed(2)} MB`;

/**
 * What is watched, and by how much it may rise over one life. Absolute parts are what a busy page moves by without a leak:
 * an undo history that fills up, a place opened for the first time; a kept page of the drawer has some hundred nodes, a
 * place of the job some dozen listeners.
 */
export const FIGURES: Readonly<Record<Figure, About>> = {
  heap: {
    words: 'page: JavaScript memory',
    of: 'page',
    tolerance: { absolute: 3 * MB, share: 0.1 },
    show: size,
  },
  listeners: {
    words: 'page: event listeners',
    of: 'page',
    tolerance: { absolute: 25, share: 0.05 },
    show: count,
  },
  nodes: {
    words: 'page: elements and texts',
    of: 'page',
    tolerance: { absolute: 150, share: 0.05 },
    show: count,
  },
  shapes: {
    words: 'page: shapes on canvases',
    of: 'page',
    tolerance: { absolute: 20, share: 0.05 },
    show: count,
  },
  workers: { words: 'page: workers', of: 'page', tolerance: { absolute: 1, share: 0 }, show: count },
  used: {
    words: 'program: bytes in use',
    of: 'program',
    tolerance: { absolute: 6 * MB, share: 0.15 },
    show: size,
  },
  // The engine keeps what it once took: making twenty sheets for the preview brings it to some 420 MB, and no further.
  memory: {
    words: 'program: memory it holds',
    of: 'program',
    tolerance: { absolute: 300 * MB, share: 0.1 },
    show: size,
  },
  handles: { words: 'program: open files', of: 'program', tolerance: { absolute: 4, share: 0 }, show: count },
  // Histories fill up to three hundred states of each layout, at most 2 kB each as they are packed.
  database: { words: 'shop: database', of: 'shop', tolerance: { absolute: 3 * MB, share: 0.25 }, show: size },
};

/** Milliseconds for a page to finish what it does in quiet moments. */
const QUIET = 400;

/** Reads all figures again and again, and judges them at the end. */
export class Watch {
  readonly readings: Record<Figure, Reading[]> = {
    heap: [],
    listeners: [],
    nodes: [],
    shapes: [],
    workers: [],
    used: [],
    memory: [],
    handles: [],
    database: [],
  };
  readonly #page: Page;
  readonly #session: CDPSession;
  readonly #program: Program;
  pageLife = 1;

  private constructor(page: Page, session: CDPSession, program: Program) {
    this.#page = page;
    this.#session = session;
    this.#program = program;
  }

  static async over(page: Page, program: Program): Promise<Watch> {
    const session = await page.context().newCDPSession(page);
    await session.send('Performance.enable');
    await session.send('HeapProfiler.enable');
    return new Watch(page, session, program);
  }

  /** One reading of everything, after that many acts. The page should lie at rest, always in the same state. */
  async read(at: number): Promise<void> {
    await pause(QUIET);
    for (let pass = 0; pass < 2; pass += 1) await this.#session.send('HeapProfiler.collectGarbage');
    const { metrics } = await this.#session.send('Performance.getMetrics');
    const of = (name: string) => metrics.find((metric) => metric.name === name)?.value;
    this.#add('heap', at, of('JSHeapUsedSize'));
    this.#add('listeners', at, of('JSEventListeners'));
    this.#add('nodes', at, of('Nodes'));
    // The library keeps every shape that was not destroyed in one table, and puts itself on the page under its name.
    const shapes = await this.#page.evaluate(() => {
      const { Konva } = window as { Konva?: { shapes?: object } };
      return Konva?.shapes ? Object.keys(Konva.shapes).length : undefined;
    });
    this.#add('shapes', at, shapes);
    this.#add('workers', at, this.#page.workers().length);
    this.#add('used', at, await this.#program.used());
    this.#add('memory', at, this.#program.memory);
    this.#add('handles', at, this.#program.handles);
    this.#add('database', at, this.#program.bytesOf('toeboard.sqlite'));
  }

  #add(figure: Figure, at: number, value: number | undefined): void {
    const { of } = FIGURES[figure];
    const life = of === 'page' ? this.pageLife : of === 'program' ? this.#program.lives : 1;
    if (value !== undefined) this.readings[figure].push({ life, at, value });
  }

  /** One line a figure, and those that grow. */
  verdict(): { readonly lines: readonly string[]; readonly growing: readonly string[] } {
    const growing: string[] = [];
    const lines = (Object.keys(FIGURES) as Figure[]).map((figure) => {
      const { words, show, tolerance } = FIGURES[figure];
      const readings = this.readings[figure];
      const [first, last] = [readings[0], readings.at(-1)];
      if (!first || !last) return `${words.padEnd(28)} cannot be read on this system`;
      const growth: Growth = judgeGrowth(readings, tolerance);
      const trend = `${show(growth.perThousand)} a thousand acts, ${show(growth.rise)} over a life of at most ${show(growth.allowed)}`;
      const line = `${words.padEnd(28)} ${show(first.value)} to ${show(last.value)}; ${trend}: ${growth.outcome}`;
      if (growth.outcome === 'grows') growing.push(line);
      return line;
    });
    return { lines, growing };
  }
}

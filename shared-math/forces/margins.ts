import type { Layout } from '../layout/index.ts';
import { type LinkBears, linkBears, linkMaking } from '../links/index.ts';
import type { ForceFigure } from './figures.ts';
import type { FigureReach, LinkForces, LoadCaseId, Reach } from './load-cases.ts';

/** How many times over a link bears what a case asks of it. Rough bounds: no strength is certified. */
export interface Margin {
  /** Undefined if the case neither pushes nor pulls it. */
  readonly times: number | undefined;
  /** What comes nearer to what it bears. */
  readonly by: 'push' | 'pull';
  /** N of that, above 0, and the handwheel (rad) where it is. */
  readonly force: number;
  readonly handwheel: number;
}

export interface LinkMargins {
  readonly figure: ForceFigure & { readonly link: NonNullable<ForceFigure['link']> };
  readonly bears: LinkBears;
  readonly cases: readonly { readonly id: LoadCaseId; readonly light: Margin; readonly heavy: Margin }[];
}

/** Of a case without forces: no margin. */
const NONE: Reach = { least: { value: 0, handwheel: 0 }, most: { value: 0, handwheel: 0 } };
const NOTHING: Pick<FigureReach, 'light' | 'heavy'> = { light: NONE, heavy: NONE };

function marginOf(bears: LinkBears, { least, most }: Reach): Margin {
  const push = { by: 'push', force: -least.value, handwheel: least.handwheel } as const;
  const pull = { by: 'pull', force: most.value, handwheel: most.handwheel } as const;
  const nearer = push.force / bears.push >= pull.force / bears.pull ? push : pull;
  return { ...nearer, times: nearer.force > 0 ? bears[nearer.by] / nearer.force : undefined };
}

/** What each link bears beside what each case asks of it, in the order of the figures. */
export function linkMargins(layout: Layout, { figures, cases }: LinkForces): LinkMargins[] {
  return figures.flatMap((figure, index) => {
    const { link } = figure;
    if (!link) return [];
    const bears = linkBears(linkMaking(layout, link.key), link.length);
    return [
      {
        figure: { ...figure, link },
        bears,
        cases: cases.map(({ id, figures: reaches }) => {
          const { light, heavy } = reaches[index] ?? NOTHING;
          return { id, light: marginOf(bears, light), heavy: marginOf(bears, heavy) };
        }),
      },
    ];
  });
}

/** The case that leaves a link the least margin, at its heavier load; undefined if none asks anything of it. */
export function leastMargin({
  cases,
}: LinkMargins): { readonly id: LoadCaseId; readonly margin: Margin } | undefined {
  let least: { readonly id: LoadCaseId; readonly margin: Margin } | undefined;
  for (const { id, heavy } of cases)
    if (heavy.times !== undefined && heavy.times < (least?.margin.times ?? Number.POSITIVE_INFINITY))
      least = { id, margin: heavy };
  return least;
}

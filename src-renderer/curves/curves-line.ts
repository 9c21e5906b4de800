import type { Strip } from './strip.ts';

/** What the curves say of the present pose, in one line, for where they are folded: the strip's own figure first. */
export function curvesLine({
  headline,
  missing,
  plots,
}: Pick<Strip, 'headline' | 'missing' | 'plots'>): string {
  if (missing) return missing;
  const said = plots.flatMap(({ title, curves, words }) => {
    const figures = curves.flatMap(({ name, whose, now }) =>
      now === undefined ? [] : [`${name}${whose ? ` (${whose})` : ''} ${words(now)}`],
    );
    return figures.length > 0 ? [`${title}: ${figures.join(', ')}`] : [];
  });
  return [...(headline ? [headline] : []), ...said].join(' · ');
}

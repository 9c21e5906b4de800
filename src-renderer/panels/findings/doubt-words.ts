import type { Severity } from '../../../shared-math/findings/index.ts';

const VERDICTS: Readonly<Record<Severity, string>> = {
  stop: 'one to fix',
  attention: 'one to check',
  info: 'OK',
};

/** A finding that is another in fewer of the cars tried stays what it is, as far as a tape can say. */
const SHARE_LEAST = 0.1;

/**
 * What the doubt of measuring does to a finding, by how often it was of each severity in cars that the measurements
 * allow: "Within the doubt of measuring it could just as well be OK (4 of 12)." Empty where it stays what it is.
 */
export function severityDoubtWords(counts: Readonly<Record<Severity, number>>, severity: Severity): string {
  const all = counts.stop + counts.attention + counts.info;
  const others = (['stop', 'attention', 'info'] as const).filter(
    (other) => other !== severity && counts[other] > SHARE_LEAST * all,
  );
  if (others.length === 0) return '';
  const words = others.map((other) => `${VERDICTS[other]} (${counts[other]} of ${all})`);
  return `Within the doubt of measuring it could just as well be ${words.join(' or ')}.`;
}

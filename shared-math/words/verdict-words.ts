import { type Finding, OWN_LIMIT, type Severity } from '../findings/index.ts';

/** What a finding's sign says to those who listen. */
export const SEVERITY_WORDS: Record<Severity, string> = {
  stop: 'Must fix',
  attention: 'Check',
  info: 'OK',
};

/** "1 to fix · 2 to check"; where there is neither, that nothing is past its limit. */
export function tallyWords(counts: Readonly<Record<Severity, number>>): string {
  const parts = [
    counts.stop > 0 ? `${counts.stop} to fix` : '',
    counts.attention > 0 ? `${counts.attention} to check` : '',
  ].filter(Boolean);
  return parts.join(' · ') || 'Nothing past its limit';
}

/** A stretch of a finding's quiet line; `own` where it names the shop's own limit. */
export interface Stretch {
  readonly text: string;
  readonly own: boolean;
}

/**
 * "limit 0.5° · common practice, no published source", with the shop's own limits set apart. In short, what everybody
 * in the trade knows to have no published source is reported by its first two words.
 */
export function groundsOf({ limit, source: whole }: Finding, short = false): Stretch[] {
  const source = short ? whole.replaceAll('common practice, no published source', 'common practice') : whole;
  const line = limit ? `${limit} · ${source}` : source;
  return line
    .split(OWN_LIMIT)
    .flatMap((text, at) => [...(at > 0 ? [{ text: OWN_LIMIT, own: true }] : []), { text, own: false }])
    .filter(({ text }) => text !== '');
}

/** A pose to be reported: heave in mm, roll and handwheel in degrees. */
export interface SaidPose {
  readonly heave: number;
  readonly roll: number;
  readonly handwheel: number;
}

/** A pose that a finding was measured in, short: "3 in of droop", "3 in of bump, 3° of roll, 544° right". */
export function poseWords(pose: SaidPose, length: (mm: number) => string): string {
  const degrees = (value: number) => `${Math.round(Math.abs(value) * 10) / 10}°`;
  const parts = [
    Math.abs(pose.heave) > 0.05
      ? `${length(Math.abs(pose.heave))} of ${pose.heave > 0 ? 'bump' : 'droop'}`
      : '',
    Math.abs(pose.roll) > 0.005
      ? `${degrees(pose.roll)} of roll, ${pose.roll > 0 ? 'left' : 'right'} wheel up`
      : '',
    Math.abs(pose.handwheel) > 0.05
      ? `${Math.round(Math.abs(pose.handwheel))}° of handwheel to the ${pose.handwheel > 0 ? 'left' : 'right'}`
      : '',
  ].filter(Boolean);
  return parts.join(', ') || 'ride height';
}

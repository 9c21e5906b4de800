import type { Finding, Remedy } from '../../../shared-math/findings/index.ts';
import { type LayoutDocument, moveHardpoint, withValue } from '../../../shared-math/layout/index.ts';

/** The document with a remedy taken. Not validated: the edit that takes it does that. */
export function remedied(document: LayoutDocument, remedy: Remedy): LayoutDocument {
  return remedy.kind === 'move'
    ? moveHardpoint(document, remedy.id, remedy.to)
    : withValue(document, remedy.path, remedy.value);
}

/** The words on the button that takes a finding's remedy; empty if it has none. */
export function remedyWords({ remedy, advice }: Finding): string {
  if (!remedy) return '';
  return remedy.kind === 'set' ? remedy.words : advice.replace(/\.$/, '');
}

/** The step in the history: what was done, without what it promised. */
export function remedyLabel(finding: Finding): string {
  return remedyWords(finding).replace(/: .*$/, '');
}

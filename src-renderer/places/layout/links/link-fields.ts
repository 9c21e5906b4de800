import type { LayoutDocument } from '../../../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../../../shared-math/outcome.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';

type Branch = Readonly<Record<string, unknown>>;

/** A branch with the value at the path set, whatever stands on the way made; undefined takes it out with what it leaves empty. */
function planted(branch: Branch, [key, ...rest]: readonly string[], value: unknown): Branch {
  if (key === undefined) return branch;
  const { [key]: old, ...others } = branch;
  const under = rest.length === 0 ? value : planted((old ?? {}) as Branch, rest, value);
  const empty = under === undefined || (rest.length > 0 && Object.keys(under as Branch).length === 0);
  return empty ? others : { ...branch, [key]: under };
}

/** A copy of the document with an optional value set, as `links.dragLink.wall`; undefined takes it out. */
export function withOptional(document: LayoutDocument, path: string, value: unknown): LayoutDocument {
  return planted(document as unknown as Branch, path.split('.'), value) as unknown as LayoutDocument;
}

/** Sets optional values of the open document as one step; answers why not, if not. */
export function setOptional(
  openLayout: OpenLayout,
  label: string,
  values: readonly (readonly [path: string, value: unknown])[],
): Outcome<unknown, string> {
  if (!openLayout.document) return failed('no layout is open');
  const changed = values.reduce(
    (document, [path, value]) => withOptional(document, path, value),
    openLayout.document,
  );
  return openLayout.edits.change(label, changed) ? succeeded(undefined) : failed(openLayout.edits.refusal);
}

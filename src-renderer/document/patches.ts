/**
 * What makes one JSON value of another: at each path the value that stands there afterwards, or none where it is gone. Values
 * are never changed in place; what no patch touches is the same object before and after.
 */
export type Patch = readonly [path: readonly (string | number)[], value?: unknown];

type Plain = Readonly<Record<string, unknown>>;

const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function collect(from: unknown, to: unknown, path: readonly (string | number)[], patches: Patch[]): void {
  if (Object.is(from, to)) return;
  if (Array.isArray(from) && Array.isArray(to) && from.length === to.length) {
    for (const [i, value] of to.entries()) collect(from[i], value, [...path, i], patches);
    return;
  }
  if (isPlain(from) && isPlain(to)) {
    for (const key of Object.keys(from))
      if (from[key] !== undefined && to[key] === undefined) patches.push([[...path, key]]);
    for (const [key, value] of Object.entries(to))
      if (value !== undefined) collect(from[key], value, [...path, key], patches);
    return;
  }
  patches.push([path, to]);
}

/** The patches that make `to` of `from`, two JSON values; none if they are alike. */
export function patchesBetween(from: unknown, to: unknown): Patch[] {
  const patches: Patch[] = [];
  collect(from, to, [], patches);
  return patches;
}

function patchedAt(value: unknown, path: readonly (string | number)[], patch: Patch): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return patch[1];
  if (Array.isArray(value)) return value.map((each, i) => (i === step ? patchedAt(each, rest, patch) : each));
  if (!isPlain(value)) throw new TypeError('a patch for another value');
  if (rest.length > 0 || patch.length === 2) return { ...value, [step]: patchedAt(value[step], rest, patch) };
  const { [step]: _, ...others } = value;
  return others;
}

/** The value with its patches. Throws where they were made for a value of another shape. */
export function patched(value: unknown, patches: readonly Patch[]): unknown {
  return patches.reduce((so, patch) => patchedAt(so, patch[0], patch), value);
}

/** A value's text in which the order of keys plays no part. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (!isPlain(value)) return JSON.stringify(value) ?? 'null';
  const keys = Object.keys(value).filter((key) => value[key] !== undefined);
  return `{${keys
    .sort()
    .map((key) => `${JSON.stringify(key)}:${canonical(value[key])}`)
    .join(',')}}`;
}

/** A mark by which a JSON value is known again: FNV-1a over its text, twice 32 bits from different beginnings. */
export function markOf(value: unknown): string {
  let [low, high] = [0x811c9dc5, 0x01000193];
  for (const sign of canonical(value)) {
    const code = sign.codePointAt(0) as number;
    low = Math.imul(low ^ code, 0x01000193) >>> 0;
    high = Math.imul(high ^ (code + 0x9e37), 0x01000193) >>> 0;
  }
  return low.toString(36) + high.toString(36);
}

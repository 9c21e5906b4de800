/** Characters, as in the contract and in the layout document. */
const NAME_MAX = 200;

function withEnd(name: string, end: string): string {
  // A cut may not leave half of a surrogate pair behind.
  const start = name.slice(0, NAME_MAX - end.length).replace(/[\uD800-\uDBFF]$/, '');
  return start.trimEnd() + end;
}

function firstFree(name: string, ends: Iterable<string>, taken: readonly string[]): string {
  const others = new Set(taken.map((entry) => entry.toLowerCase()));
  for (const end of ends) {
    const candidate = withEnd(name, end);
    if (!others.has(candidate.toLowerCase())) return candidate;
  }
  return name;
}

function* numbered(word: string): Generator<string> {
  yield word;
  for (let number = 2; ; number += 1) yield `${word} ${number}`;
}

/** The name itself if no neighbour has it, else "name 2", "name 3": for names that no person typed. */
export function distinctName(name: string, taken: readonly string[]): string {
  return firstFree(name, numbered(''), taken);
}

/** "name copy", then "name copy 2"; the copy of a copy counts on instead of growing a tail. */
export function copyName(name: string, taken: readonly string[]): string {
  return firstFree(name.replace(/ copy(?: \d+)?$/, ''), numbered(' copy'), taken);
}

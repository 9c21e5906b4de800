/** What is worked out when it is first asked for, and kept. */
export function once<Value>(make: () => Value): () => Value {
  let kept: { readonly value: Value } | undefined;
  return () => {
    kept ??= { value: make() };
    return kept.value;
  };
}

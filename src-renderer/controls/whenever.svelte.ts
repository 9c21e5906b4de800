import { untrack } from 'svelte';

/**
 * An effect that says what it follows: `then` runs at first and whenever what `of` reads has changed, and nothing that
 * `then` itself reads makes it run again. What `then` returns is called before it runs anew, and at the end.
 */
export function whenever<Value>(
  of: () => Value,
  // biome-ignore lint/suspicious/noConfusingVoidType: as Svelte itself types what an effect returns.
  then: (value: Value) => void | (() => void),
): void {
  $effect(() => {
    const value = of();
    return untrack(() => then(value));
  });
}

/** The same before the page shows what has changed: for what has to be looked at as it was, as where the focus is. */
export function wheneverBefore<Value>(of: () => Value, then: (value: Value) => void): void {
  $effect.pre(() => {
    const value = of();
    untrack(() => then(value));
  });
}

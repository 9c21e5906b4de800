import type { Component } from 'svelte';

/** Something that is handed in, at once or when it is first wanted. */
export interface Handed<Value> {
  /** Undefined until it has come. */
  readonly value: Value | undefined;
  /** Whether it was wanted and could not be loaded. */
  readonly failed?: boolean;
  /** Loads it if it is not there, or tries again; settles either way. */
  fetch?(): Promise<void>;
}

/** A component with its props. */
export interface Shown {
  readonly component: Component<Record<string, unknown>>;
  readonly props: Record<string, unknown>;
}

/** A component with its props, whatever they are. */
// biome-ignore lint/suspicious/noExplicitAny: Svelte itself names the props of a component so.
export function shown<Props extends Record<string, any>>(component: Component<Props>, props: Props): Shown {
  return { component: component as unknown as Shown['component'], props };
}

/**
 * Loads a file of the program once more after it did not come. A browser may keep the failure by the file's address and not
 * ask again, so it is asked for by an address that says which try it is; the browser's error names the file.
 */
function loadAgain<Module>(error: unknown, tries: number, load: () => Promise<Module>): Promise<Module> {
  const address = /\S+:\/\/\S+\.js/.exec(error instanceof Error ? error.message : '')?.[0];
  return address ? import(/* @vite-ignore */ `${address}?try=${tries}`) : load();
}

/** What stands in one of the program's files of its own and comes when it is first wanted. */
export class Late<Module, Value> implements Handed<Value> {
  readonly #load: () => Promise<Module>;
  readonly #from: (module: Module) => Value;
  #coming: Promise<void> | undefined;
  #tries = 0;
  #error: unknown;

  value: Value | undefined = $state.raw(undefined);
  /** Whether the last try has failed; it stays so until one succeeds. */
  failed = $state(false);

  /** How its file is imported, and what is wanted of it. */
  constructor(load: () => Promise<Module>, from: (module: Module) => Value) {
    this.#load = load;
    this.#from = from;
  }

  /** Loads it if it is not there; again after a failure. Settles either way. */
  fetch(): Promise<void> {
    if (this.#coming) return this.#coming;
    this.#tries += 1;
    const loading = this.failed ? loadAgain(this.#error, this.#tries, this.#load) : this.#load();
    this.#coming = loading.then(
      (module) => {
        this.value = this.#from(module);
        this.failed = false;
      },
      (error: unknown) => {
        // What names the file is kept: an error of a later try need not.
        this.#error ??= error;
        this.failed = true;
        this.#coming = undefined;
      },
    );
    return this.#coming;
  }
}

/** A piece of the page that is loaded when it is first shown: how its file is imported, and its props. */
// biome-ignore lint/suspicious/noExplicitAny: Svelte itself names the props of a component so.
export function latePiece<Props extends Record<string, any>>(
  load: () => Promise<{ default: Component<Props> }>,
  props: Props,
): Handed<Shown> {
  return new Late(load, (module) => shown(module.default, props));
}

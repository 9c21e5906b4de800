import type { Component } from 'svelte';
import type { PlacePiece } from './place.ts';

type Loaded = { default: Component<Record<string, unknown>> };

/**
 * Loads a file of the program once more after it did not come. A browser may keep the failure by the file's address and not
 * ask again, so it is asked for by an address that says which try it is; the browser's error names the file.
 */
function loadAgain(error: unknown, tries: number, load: () => Promise<Loaded>): Promise<Loaded> {
  const address = /\S+:\/\/\S+\.js/.exec(error instanceof Error ? error.message : '')?.[0];
  return address ? import(/* @vite-ignore */ `${address}?try=${tries}`) : load();
}

/** A piece whose component is one of the program's files of its own and comes when it is first wanted. */
export class LatePiece implements PlacePiece {
  readonly #load: () => Promise<Loaded>;
  readonly props: Record<string, unknown>;
  #coming: Promise<void> | undefined;
  #tries = 0;
  #error: unknown;

  component: PlacePiece['component'] = $state.raw(undefined);
  /** Whether the last try has failed; it stays so until one succeeds. */
  failed = $state(false);

  constructor(load: () => Promise<Loaded>, props: Record<string, unknown>) {
    this.#load = load;
    this.props = props;
  }

  /** Loads the component if it is not there; again after a failure. Settles either way. */
  fetch(): Promise<void> {
    if (this.#coming) return this.#coming;
    this.#tries += 1;
    const loading = this.failed ? loadAgain(this.#error, this.#tries, this.#load) : this.#load();
    this.#coming = loading.then(
      ({ default: component }) => {
        this.component = component;
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

/** A piece of a place that is loaded when the place is first opened: how its file is imported, and its props. */
// biome-ignore lint/suspicious/noExplicitAny: Svelte itself names the props of a component so.
export function latePiece<Props extends Record<string, any>>(
  load: () => Promise<{ default: Component<Props> }>,
  props: Props,
): LatePiece {
  return new LatePiece(load as unknown as ConstructorParameters<typeof LatePiece>[0], props);
}

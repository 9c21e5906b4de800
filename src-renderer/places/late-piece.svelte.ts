import type { Component } from 'svelte';
import type { PlacePiece } from './place.ts';

/** A piece whose component is one of the program's files of its own and comes when it is first wanted. */
export class LatePiece implements PlacePiece {
  readonly #load: () => Promise<{ default: Component<Record<string, unknown>> }>;
  readonly props: Record<string, unknown>;
  #coming: Promise<void> | undefined;

  component: PlacePiece['component'] = $state.raw(undefined);
  /** Whether the last try has failed; it stays so until one succeeds. */
  failed = $state(false);

  constructor(
    load: () => Promise<{ default: Component<Record<string, unknown>> }>,
    props: Record<string, unknown>,
  ) {
    this.#load = load;
    this.props = props;
  }

  /** Loads the component if it is not there; again after a failure. Settles either way. */
  fetch(): Promise<void> {
    this.#coming ??= this.#load().then(
      ({ default: component }) => {
        this.component = component;
        this.failed = false;
      },
      () => {
        this.failed = true;
        this.#coming = undefined;
      },
    );
    return this.#coming;
  }
}

/** A piece of a place that is loaded when the place is first opened: `() => import('./SomePage.svelte')`, and its props. */
// biome-ignore lint/suspicious/noExplicitAny: Svelte itself names the props of a component so.
export function latePiece<Props extends Record<string, any>>(
  load: () => Promise<{ default: Component<Props> }>,
  props: Props,
): LatePiece {
  return new LatePiece(load as unknown as ConstructorParameters<typeof LatePiece>[0], props);
}

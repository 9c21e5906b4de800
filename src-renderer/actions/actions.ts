import { createContext } from 'svelte';
import type { Action } from '../controls/action.ts';

/** All that a person can do, from whoever hands it in. */
export class Actions {
  readonly list: readonly Action[];

  constructor(list: readonly Action[]) {
    this.list = list;
  }

  /** The action of that name, for menus that come from outside; returns undefined if there is none. */
  named(id: string): Action | undefined {
    return this.list.find((action) => action.id === id);
  }

  /** Runs an action if it can be done now. */
  perform(id: string): void {
    const action = this.named(id);
    if (action?.enabled()) action.run();
  }
}

/** The one of the page, for its components. */
export const [getActions, setActions] = createContext<Actions>();

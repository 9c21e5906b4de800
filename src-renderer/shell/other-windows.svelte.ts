import { getArchive } from '../document/archive.svelte.ts';
import { getMeasuring } from '../document/measuring.svelte.ts';
import { getOpenLayout } from '../document/open-layout.svelte.ts';
import { getShell } from '../document/shell.svelte.ts';
import { getShop } from '../document/shop.svelte.ts';
import { type ChangeElsewhere, onChangeElsewhere } from '../host/client.ts';
import { PAGE_CLOCK, Throttle } from '../jobs/throttle.ts';
import { getComparison } from '../panels/compare/comparison.svelte.ts';
import { getShelf } from '../panels/shelf/shelf.svelte.ts';

/** ms between two readings of the lists while another window drags. */
const LISTS_AFTER = 700;

/**
 * Has the page go along with what other windows change: the layout on the board, its car's measurements, the settings and the
 * lists. What is being typed or dragged here is left alone. Call it while the page is set up.
 */
export function followOtherWindows(): void {
  const openLayout = getOpenLayout();
  const shop = getShop();
  const shell = getShell();
  const shelf = getShelf();
  const measuring = getMeasuring();
  const archive = getArchive();
  const comparison = getComparison();

  const lists = new Throttle(
    LISTS_AFTER,
    () => {
      void shop.followLists();
      void comparison.readAgain();
      if (shell.drawer === 'bin') void archive.readBin();
    },
    PAGE_CLOCK,
  );

  function follow({ touched, id }: ChangeElsewhere): void {
    if (touched === 'settings') void shop.followSettings();
    else if (touched === 'survey') void measuring.followStore();
    else if (touched === 'everything') {
      // Another shop stands in the place of this one; what is not saved here is not thrown away for it.
      if (!openLayout.busy && !measuring.pending) location.reload();
    } else if (touched !== 'tickets') {
      // Tickets are the counter's, which listens for itself.
      if (touched === 'variant' && id === openLayout.variant?.id) void shop.followOpen();
      if (touched !== 'variant' && shelf.ready) void shelf.read();
      lists.ask();
    }
  }

  /** A window of another browser is heard of when this one is looked at again. */
  function lookAgain(): void {
    if (!shop.ready || openLayout.saved !== 'saved') return;
    void shop.followOpen();
    void measuring.followStore();
    void shop.followSettings();
    lists.ask();
  }

  $effect(() => {
    const stop = onChangeElsewhere(follow);
    addEventListener('focus', lookAgain);
    return () => {
      stop();
      removeEventListener('focus', lookAgain);
      lists.stop();
    };
  });
}

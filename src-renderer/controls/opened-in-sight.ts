/** The nearest frame around an element that scrolls up and down; undefined if none does. */
function scrollerOf(element: Element): Element | undefined {
  for (let at = element.parentElement; at && at !== document.body; at = at.parentElement) {
    const { overflowY } = getComputedStyle(at);
    if ((overflowY === 'auto' || overflowY === 'scroll') && at.scrollHeight > at.clientHeight) return at;
  }
  return undefined;
}

/** What a button has opened: what it names, the rest of its fold, or what stands next after it; undefined while it is closed. */
function openedBy(button: Element): Element | undefined {
  if (button.tagName === 'SUMMARY') {
    const fold = button.parentElement;
    return fold?.hasAttribute('open') ? fold : undefined;
  }
  if (button.getAttribute('aria-expanded') !== 'true') return undefined;
  const named = button.getAttribute('aria-controls');
  return (named && document.getElementById(named)) || (button.nextElementSibling ?? undefined);
}

/**
 * Brings into sight what a button opens within a column that scrolls, for its whole page: by pointer and by key, both of
 * which come as a click. The button itself stays in sight, so that what is taller than the column is seen from its top.
 */
export function keepOpenedInSight(page: HTMLElement): () => void {
  const onclick = (event: Event) => {
    const button = event.target instanceof Element && event.target.closest('[aria-expanded], summary');
    if (!button) return;
    // Once it is opened and laid out.
    requestAnimationFrame(() =>
      requestAnimationFrame(() => {
        const opened = openedBy(button);
        const scroller = button.isConnected ? scrollerOf(button) : undefined;
        if (!opened || !scroller?.contains(opened)) return;
        opened.scrollIntoView({ block: 'nearest' });
        button.scrollIntoView({ block: 'nearest' });
      }),
    );
  };
  page.addEventListener('click', onclick);
  return () => page.removeEventListener('click', onclick);
}

// What is typed into a field and not entered yet stands in that field alone. A field marks itself with `data-unentered` for
// as long as it holds such a text, so that nobody leaves the page over it unasked.

/** Enters what is being typed, as going on to another field would; what is refused stays marked. */
export function enterTyped(): void {
  const at = document.activeElement;
  if (at instanceof HTMLElement && at.matches('input, textarea')) at.blur();
}

/** Whether some field holds what is not entered, as a figure that was refused. */
export function holdsUnentered(): boolean {
  return document.querySelector('[data-unentered]') !== null;
}

type Listener = (label: string, typed: string) => void;
const listeners = new Set<Listener>();

/** Listens for fields that go with a refused text still in them. Returns how to stop. */
export function onTypingLost(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** By a field that goes: what it still holds is reported. */
export function reportLost(label: string, typed: string): void {
  for (const listener of listeners) listener(label, typed);
}

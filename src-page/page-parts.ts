/** An element of the page, which is written with all that its script asks for. */
export function element(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page has no ${id}`);
  return found;
}

/** All elements that a selector finds. */
export function elements<Kind extends Element>(selector: string): Kind[] {
  return [...document.querySelectorAll<Kind>(selector)];
}

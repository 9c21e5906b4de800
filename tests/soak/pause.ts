/** Lets some milliseconds pass, as a person does between two moves: in hours of work they are a part of what is tried. */
export function pause(ms: number): Promise<void> {
  return new Promise((go) => setTimeout(go, ms));
}

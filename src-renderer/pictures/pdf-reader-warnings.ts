// The library leaves out what it finds too large and only writes so on its console. Here that is passed on, so that a drawing is
// never shown without a part of it in silence; its other warnings are of faults that it puts right. Imported before it.

/** What comes between the library's own messages. */
export interface LeftOut {
  readonly leftOut: 'image';
}

const TOO_LARGE = /exceeded maximum allowed size/;

console.warn = (...said: unknown[]) => {
  const leftOut: LeftOut = { leftOut: 'image' };
  if (TOO_LARGE.test(String(said[0]))) self.postMessage(leftOut);
};
console.log = console.warn;

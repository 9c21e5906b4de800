/**
 * Calls back once the type that the page has asked for is there. What it gives back calls that off: type that comes late would
 * else be drawn into what has gone from the page meanwhile.
 */
export function onceTypeCame(then: () => void): () => void {
  let off = false;
  void document.fonts.ready.then(() => {
    if (!off) then();
  });
  return () => {
    off = true;
  };
}

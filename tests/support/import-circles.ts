/** Files that import one another round about, each circle sorted; found by Tarjan's strongly connected components. */
export function circlesIn(graph: ReadonlyMap<string, readonly string[]>): string[][] {
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const path: string[] = [];
  const circles: string[][] = [];

  function visit(file: string): void {
    index.set(file, index.size);
    low.set(file, index.get(file) as number);
    path.push(file);
    let itself = false;
    for (const next of graph.get(file) ?? []) {
      if (next === file) itself = true;
      if (!graph.has(next)) continue;
      if (!index.has(next)) {
        visit(next);
        low.set(file, Math.min(low.get(file) as number, low.get(next) as number));
      } else if (path.includes(next))
        low.set(file, Math.min(low.get(file) as number, index.get(next) as number));
    }
    if (low.get(file) !== index.get(file)) return;
    const circle = path.splice(path.indexOf(file));
    if (circle.length > 1 || itself) circles.push(circle.sort());
  }

  for (const file of graph.keys()) if (!index.has(file)) visit(file);
  return circles;
}

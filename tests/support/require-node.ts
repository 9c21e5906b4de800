/** The SQLite binding crashes without a word on an old Node: say so before any test loads it. */
export default function requireNode(): void {
  const major = Number(process.versions.node.split('.')[0]);
  if (major < 24)
    throw new Error(
      `The tests need Node 24, this is ${process.versions.node}: run them with npm test, which uses the packaged Node.`,
    );
}

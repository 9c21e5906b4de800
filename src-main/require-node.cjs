// Loaded before anything else, in the oldest syntax: an old Node cannot read the sources that would tell it so.
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 22 || (major === 22 && minor < 18)) {
  process.stderr.write(
    `Toeboard needs Node 24 (22.18 at least); this is ${process.versions.node}. Run it by npm after "npm ci", or install a newer Node.\n`,
  );
  process.exit(1);
}

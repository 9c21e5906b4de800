// The one check of the Node version. Loaded before anything else, in old syntax: an old Node cannot read the sources
// that would say so, and the database's binding crashes on it without a word.
const { optionalDependencies } = require('../package.json');

/** The first Node that runs TypeScript as it stands and loads the database's binding. */
const NODE_MIN = [22, 18];

/** Whether the packages bring a Node for a system, as Node names its platform and processor. */
function bringsNode(platform, arch) {
  const system = `${platform === 'win32' ? 'win' : platform}-${arch}`;
  return Object.keys(optionalDependencies).some((name) => name.replace(/^node-(bin-)?/, '') === system);
}

/** What to do about a Node that is too old, in one line; undefined if it will do. */
function nodeRefusal(version, platform, arch) {
  const [major, minor] = version.split('.').map(Number);
  if (major > NODE_MIN[0] || (major === NODE_MIN[0] && minor >= NODE_MIN[1])) return undefined;
  const least = NODE_MIN.join('.');
  const remedy = bringsNode(platform, arch)
    ? `run npm ci and start it with npm start, which bring their own, or install Node ${least} or newer`
    : `no Node comes with the packages for ${platform} ${arch}, so install Node ${least} or newer first`;
  return `Toeboard needs Node ${least} or newer and this is ${version}: ${remedy}.`;
}

exports.bringsNode = bringsNode;
exports.nodeRefusal = nodeRefusal;

const refusal = nodeRefusal(process.versions.node, process.platform, process.arch);
if (refusal) {
  process.stderr.write(`${refusal}\n`);
  process.exit(1);
}

/** The first Node that runs TypeScript as it stands and loads the database's binding; older ones crash on it. */
const NODE_MIN = [22, 18] as const;

/** What to do about a Node that is too old, in one line; undefined if it will do. */
export function nodeRefusal(version: string): string | undefined {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  if (major > NODE_MIN[0] || (major === NODE_MIN[0] && minor >= NODE_MIN[1])) return undefined;
  return `Toeboard needs Node ${NODE_MIN.join('.')} or newer and this is ${version}: run npm ci and start it with npm start, which bring their own, or install Node 24.`;
}

// The rules on the page itself. They are a file of their own: at first the worker judges, and the page draws without them.
export { alsoMended } from './also-mended.ts';
export { judged } from './verdict-job.ts';

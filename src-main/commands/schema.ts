import { documentText, layoutJsonSchema } from '../../shared-math/layout/index.ts';
import { quoted } from '../../shared-math/outside/index.ts';
import { takeArguments } from './arguments.ts';
import { type Answer, type Command, UsageError } from './usage.ts';

function* answer(): Answer {
  yield documentText(layoutJsonSchema());
}

export const schema: Command = {
  name: 'schema',
  usage: 'schema',
  about: 'Prints the JSON Schema (2020-12) of a layout document, so that other programs may write one.',
  run(args) {
    const [extra] = takeArguments(args, { values: [], flags: [] }).words;
    if (extra !== undefined) throw new UsageError(`schema takes no file: remove ${quoted(extra)}`);
    return answer();
  },
};

import { globSync } from 'node:fs';
import { join, resolve } from 'node:path';
import ts from 'typescript';

const root = resolve(import.meta.dirname, '../..');

/** A change of one file of the program, as text. Throws if what it looks for is not there. */
export interface Change {
  readonly file: string;
  readonly find: string;
  readonly put: string;
}

function changed(text: string, { file, find, put }: Change): string {
  if (!text.includes(find)) throw new Error(`${file} has no ${find}`);
  return text.replace(find, () => put);
}

/**
 * What the compiler says of the program with some of its files changed, nothing written: the messages by file. Components
 * are left out, as they are not written in its language.
 */
export function compiledWith(changes: readonly Change[]): ReadonlyMap<string, readonly string[]> {
  const { config } = ts.readConfigFile(join(root, 'tests/tsconfig.json'), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, join(root, 'tests'));
  options.types = ['node', 'svelte', 'vite/client'];
  const host = ts.createCompilerHost(options);
  const { readFile } = host;
  host.readFile = (path) => {
    const text = readFile.call(host, path);
    return changes
      .filter(({ file }) => resolve(path) === join(root, file))
      .reduce((so, change) => changed(so, change), text as string);
  };
  host.getSourceFile = (path, how) => {
    const text = host.readFile(path);
    return text === undefined ? undefined : ts.createSourceFile(path, text, how);
  };
  const files = globSync('{shared-math,src-main,src-renderer}/**/*.ts', { cwd: root });
  const program = ts.createProgram(
    files.map((file) => join(root, file)),
    options,
    host,
  );
  const said = new Map<string, string[]>();
  for (const { file, messageText } of ts.getPreEmitDiagnostics(program)) {
    const name = file ? file.fileName.slice(root.length + 1) : '';
    const words = ts.flattenDiagnosticMessageText(messageText, ' ');
    said.set(name, [...(said.get(name) ?? []), words]);
  }
  return said;
}

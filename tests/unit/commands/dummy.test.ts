import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { COMMANDS, type Command, UsageError } from '../../../src-main/commands/index.ts';
import { toeboard } from '../../support/command-line.ts';

// A command is one file and one line: a dummy in the list is found by its name, by the help and by its own help.

const dummy: Command = {
  name: 'weigh',
  usage: 'weigh LAYOUT.json [--scale N]',
  about: 'What the dummy weighs.',
  *run([file]) {
    if (file === undefined) throw new UsageError('a file is missing');
    yield `weighed ${file}\n`;
  },
};

beforeAll(() => void (COMMANDS as Command[]).push(dummy));
afterAll(() => void (COMMANDS as Command[]).pop());

describe('a command added in one place', () => {
  test('answers by its name', async () => {
    expect(await toeboard('weigh', 'a.json')).toEqual({ code: 0, out: 'weighed a.json\n', err: '' });
  });

  test('stands in the help, and answers its own', async () => {
    const all = await toeboard('--help');
    expect(all.code).toBe(0);
    expect(all.out).toContain('weigh LAYOUT.json [--scale N]');
    const own = await toeboard('weigh', '--help');
    expect(own).toMatchObject({ code: 0, err: '' });
    expect(own.out).toContain('What the dummy weighs.');
  });

  test('its wrong use is exit 2 and one line', async () => {
    const { code, out, err } = await toeboard('weigh');
    expect([code, out]).toEqual([2, '']);
    expect(err.split('\n')[0]).toContain('a file is missing');
  });
});

import { describe, expect, test } from 'vitest';
import { asksForHelp, takeArguments } from '../../../src-main/commands/arguments.ts';
import { UsageError } from '../../../src-main/commands/index.ts';

const KNOWN = { values: ['heave', 'out'], flags: ['csv'] };
const taken = (...args: string[]) => takeArguments(args, KNOWN);

describe('the arguments of a command', () => {
  test.each([
    [['--wheels', '4'], 'unknown option --wheels'],
    [['-x'], 'unknown option -x'],
    [['--csv=yes'], '--csv takes no value'],
    [['--csv', '--csv'], '--csv is given twice'],
    [['--heave=1', '--heave', '2'], '--heave is given twice'],
    [['--heave'], '--heave needs a value'],
    [['--heave', '--csv'], '--heave needs a value'],
  ])('%j is refused: %s', (args, reason) => {
    expect(() => taken('car.json', ...args)).toThrow(new UsageError(reason));
  });

  test('values stand after a blank or an equals sign, and may begin with a minus', () => {
    for (const heave of [['--heave', '-75:75:25'], ['--heave=-75:75:25']]) {
      const { words, values, flags } = taken('car.json', ...heave, '--csv');
      expect([words, [...values], [...flags]]).toEqual([['car.json'], [['heave', '-75:75:25']], ['csv']]);
    }
    expect(taken('--out=').values.get('out')).toBe('');
    expect(taken('--out=a=b').values.get('out')).toBe('a=b');
  });

  test('after -- everything stands alone', () => {
    expect(taken('--csv', '--', '--heave', '-x')).toMatchObject({ words: ['--heave', '-x'] });
  });

  test('help is asked for by --help or -h among anything else, but not after -- or in a value', () => {
    for (const args of [['--help'], ['-h'], ['car.json', '--no-such', '--help'], ['--heave', '--help']])
      expect(asksForHelp(args), args.join(' ')).toBe(true);
    for (const args of [[], ['car.json', '--csv'], ['--', '--help'], ['--out=--help'], ['help']])
      expect(asksForHelp(args), args.join(' ')).toBe(false);
  });
});

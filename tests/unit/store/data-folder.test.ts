import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { dataFolder } from '../../../src-main/store/index.ts';

const HOME = '/home/odd';

test('TOEBOARD_DATA overrides every system, and may be relative', () => {
  for (const platform of ['linux', 'darwin', 'win32'] as const)
    expect(dataFolder({ TOEBOARD_DATA: 'cars' }, platform, HOME)).toBe(resolve('cars'));
  expect(dataFolder({ TOEBOARD_DATA: '' }, 'linux', HOME)).toBe('/home/odd/.local/share/toeboard');
});

test("each system's usual place is taken", () => {
  expect(dataFolder({}, 'linux', HOME)).toBe('/home/odd/.local/share/toeboard');
  expect(dataFolder({ XDG_DATA_HOME: '/data/odd' }, 'linux', HOME)).toBe('/data/odd/toeboard');
  expect(dataFolder({ XDG_DATA_HOME: 'relative' }, 'linux', HOME)).toBe('/home/odd/.local/share/toeboard');
  expect(dataFolder({}, 'darwin', '/Users/odd')).toBe('/Users/odd/Library/Application Support/Toeboard');
  expect(dataFolder({ APPDATA: 'C:\\Users\\odd\\AppData\\Roaming' }, 'win32', 'C:\\Users\\odd')).toBe(
    'C:\\Users\\odd\\AppData\\Roaming\\Toeboard',
  );
  expect(dataFolder({}, 'win32', 'C:\\Users\\odd')).toBe('C:\\Users\\odd\\AppData\\Roaming\\Toeboard');
});

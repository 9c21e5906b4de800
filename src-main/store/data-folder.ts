import { homedir } from 'node:os';
import { isAbsolute, posix, resolve, win32 } from 'node:path';

export type Environment = Readonly<Record<string, string | undefined>>;

/** Where a person's cars are kept: `TOEBOARD_DATA` if it is set, else the system's usual place for such data. */
export function dataFolder(
  env: Environment = process.env,
  platform: NodeJS.Platform = process.platform,
  home: string = homedir(),
): string {
  if (env['TOEBOARD_DATA']) return resolve(env['TOEBOARD_DATA']);
  if (platform === 'win32')
    return win32.join(env['APPDATA'] || win32.join(home, 'AppData', 'Roaming'), 'Toeboard');
  if (platform === 'darwin') return posix.join(home, 'Library', 'Application Support', 'Toeboard');
  // The standard for these folders says that a relative path is to be ignored.
  const shared = env['XDG_DATA_HOME'];
  return posix.join(shared && isAbsolute(shared) ? shared : posix.join(home, '.local', 'share'), 'toeboard');
}

import { build } from 'electron-vite';

/** The browser tests drive the built program, the same files a person's start serves. */
export default async function buildOnce(): Promise<void> {
  process.env['NODE_ENV_ELECTRON_VITE'] = 'production';
  await build({ logLevel: 'error' });
}

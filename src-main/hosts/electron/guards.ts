import type { Session, WebContents } from 'electron';
import { isBoard } from './board-scheme.ts';
import type { Electron } from './electron.ts';

/** Keeps a page where it is: no other page, no further windows, nothing embedded. Reloading remains. */
function confine(contents: WebContents): void {
  const stay = (event: { preventDefault(): void; readonly url: string }) => {
    if (!isBoard(event.url)) event.preventDefault();
  };
  contents.on('will-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-frame-navigate', stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

export function confineEveryPage(app: Electron['app']): void {
  app.on('web-contents-created', (_event, contents) => confine(contents));
}

type Asked = Pick<
  Session,
  'setPermissionRequestHandler' | 'setPermissionCheckHandler' | 'setDevicePermissionHandler'
>;

/** The board asks for no camera, place, notification or device; so nothing is ever granted. */
export function denyPermissions(session: Asked): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
}

import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { shownText } from '../../shared-math/outside/index.ts';
import type { Call, CallHost, CallResult, Request } from '../../src-main/api/contract.ts';
import * as doubt from './doubt.ts';
import { announcing } from './other-windows.ts';
import { showPresence } from './presence.ts';
import { listening } from './silence.ts';

/** What the desktop window's preload hands over; absent in a browser. */
export interface HostBridge {
  call(name: Call, input: unknown): Promise<unknown>;
  /** Asks where an output that is ready goes, and writes it there; a desktop window alone can. */
  saveOutput?(job: string): Promise<unknown>;
  /** The next file that was opened with the program; a desktop window alone can be handed one. */
  takeOpened?(): Promise<unknown>;
  /** Tells which item of the native menu was chosen, by the name of its action. Returns how to stop listening. */
  onMenu?(listener: (action: string) => void): (() => void) | undefined;
}

export { type ChangeElsewhere, onChangeElsewhere } from './other-windows.ts';
export { onSilence } from './silence.ts';

declare global {
  interface Window {
    toeboardHost?: HostBridge;
  }
}

const TOKEN_KEY = 'toeboard-token';
/** Characters. Browsers let small requests outlive their page, up to 64 kB of them together. */
const KEEPALIVE_MAX = 30_000;

const GONE = 'the program behind this window does not answer';
const NO_ANSWER: CallResult<Call> = { ok: false, failure: { code: 'no-answer', reason: GONE } };
/** Characters of a refusal by the program, which is a sentence or three. */
const REASON_MOST = 400;
function notAdmitted(reason: string): CallResult<Call> {
  return { ok: false, failure: { code: 'not-admitted', reason } };
}

const NOT_ADMITTED = notAdmitted(
  'this window does not belong to the program that runs now; use the window that it opened',
);
/** Without a code there was never a window to belong to. */
const NO_CODE =
  'this address is not whole: it opens the board only with all that the program has printed of it';

function isResult(value: unknown): value is CallResult<Call> {
  return typeof value === 'object' && value !== null && 'ok' in value;
}

/** Takes the single-use code out of the address at once, so that it stays in no history and no bookmark. */
function takeCode(): string {
  const code = location.hash.replace(/^#(code=)?/, '');
  if (code) history.replaceState(null, '', location.pathname + location.search);
  return code;
}

/** Buys the token with the code of the address; what the program refuses it for, in its own words. */
async function exchange(code: string): Promise<Outcome<string, string>> {
  try {
    const response = await fetch('/exchange', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code }),
    });
    const { token, reason } = (await response.json()) as { token?: unknown; reason?: unknown };
    if (response.ok && typeof token === 'string') return succeeded(token);
    return failed(typeof reason === 'string' ? shownText(reason.replace(/\.$/, ''), REASON_MOST) : GONE);
  } catch {
    return failed(GONE);
  }
}

/** Kept for reloads of this window only; never in a cookie, which every port of this machine would see. */
function remembered(): string | undefined {
  return sessionStorage.getItem(TOKEN_KEY) ?? undefined;
}

/** What the host wants to see before it answers anything; undefined if the window itself is leave enough. */
export function hostHeaders(): Record<string, string> {
  const token = window.toeboardHost ? undefined : remembered();
  return token && !doubt.stands() ? { authorization: `Bearer ${token}` } : {};
}

async function loopbackHost(): Promise<CallHost> {
  const code = takeCode();
  const exchanged = code ? await exchange(code) : failed(NO_CODE);
  if (exchanged.ok) sessionStorage.setItem(TOKEN_KEY, exchanged.value);
  const token = exchanged.ok ? exchanged.value : remembered();
  if (token) showPresence(token);
  const unknown = exchanged.ok ? NOT_ADMITTED : notAdmitted(exchanged.failure);

  const call = async (name: Call, input: unknown): Promise<CallResult<Call>> => {
    if (!token) return unknown;
    const body = JSON.stringify({ name, input });
    try {
      if (doubt.stands() && !(await doubt.settle(token))) return NOT_ADMITTED;
      const response = await fetch('/rpc', {
        method: 'POST',
        headers: { 'content-type': 'application/json', authorization: `Bearer ${token}` },
        body,
        keepalive: name === 'variant.save' && body.length < KEEPALIVE_MAX,
      });
      if (response.status === 401 || response.status === 403) return NOT_ADMITTED;
      const result: unknown = await response.json();
      return isResult(result) ? result : NO_ANSWER;
    } catch {
      doubt.raise();
      return NO_ANSWER;
    }
  };
  return call as CallHost;
}

function bridgeHost(bridge: HostBridge): CallHost {
  const call = async (name: Call, input: Request<Call>): Promise<CallResult<Call>> => {
    try {
      const result = await bridge.call(name, input);
      return isResult(result) ? result : NO_ANSWER;
    } catch {
      return NO_ANSWER;
    }
  };
  return call as CallHost;
}

/** The one door to the host. Which host it is, nobody past this file knows. Never throws: failures are data. */
export async function connectHost(): Promise<CallHost> {
  return announcing(listening(window.toeboardHost ? bridgeHost(window.toeboardHost) : await loopbackHost()));
}

/** What the native menu's channel says when a file waits to be taken. */
const FILE_WAITS = 'take-opened-file';

/** A file that somebody has opened with the program by the system; its text, or in one clause why there is none. */
export interface OpenedFile {
  readonly fileName: string;
  readonly text?: string;
  readonly reason?: string;
}

/** Takes each file that was or will be opened with the program, in a desktop window. Returns how to stop. */
export function onOpenedFile(taken: (file: OpenedFile) => void): () => void {
  const bridge = window.toeboardHost;
  if (!bridge?.takeOpened) return () => {};
  const takeAll = async () => {
    for (;;) {
      const file = (await bridge.takeOpened?.()) as OpenedFile | undefined;
      if (!file) return;
      taken(file);
    }
  };
  void takeAll();
  return onNativeMenu((action) => {
    if (action === FILE_WAITS) void takeAll();
  });
}

/** Listens to the native menu, where there is one. */
export function onNativeMenu(listener: (action: string) => void): () => void {
  return window.toeboardHost?.onMenu?.(listener) ?? (() => {});
}

/**
 * Lets a browser ask before it closes a page whose work is not in the store. A desktop window is left alone: it
 * would refuse to close without a word.
 */
export function guardLeaving(unsafe: () => boolean): () => void {
  if (window.toeboardHost) return () => {};
  const ask = (event: BeforeUnloadEvent) => {
    if (unsafe()) event.preventDefault();
  };
  window.addEventListener('beforeunload', ask);
  return () => window.removeEventListener('beforeunload', ask);
}

import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { hostHeaders } from './client.ts';
import * as doubt from './doubt.ts';

const GONE = 'the program behind this window does not answer';

/** Where an output went: onto the disk, into the browser's hands, or nowhere as the person wished. */
export type Delivered =
  | { readonly to: 'disk'; readonly path: string }
  | { readonly to: 'browser'; readonly fileName: string }
  | { readonly to: 'nowhere' };

async function fetched(path: string): Promise<Outcome<Blob, string>> {
  try {
    const response = await fetch(path, { headers: hostHeaders() });
    if (!response.ok) return failed('it is no longer kept: make it again');
    return succeeded(await response.blob());
  } catch {
    doubt.raise();
    return failed(GONE);
  }
}

/** A page of a preview, or the text of a table. */
export function fetchPart(job: string, part: number): Promise<Outcome<Blob, string>> {
  return fetched(`/output/${job}/${part}`);
}

/** The handbook as a PDF, made as it is asked for. */
export function fetchHandbook(paper: 'letter' | 'a4'): Promise<Outcome<Blob, string>> {
  return fetched(`/output/handbook/${paper}`);
}

/** The file of the whole shop, with the earlier states of all layouts or without. */
export function fetchWholeShop(history: 'none' | 'all' | number): Promise<Outcome<Blob, string>> {
  if (typeof history === 'number') return fetched(`/shop/newest/${history}`);
  return fetched(history === 'all' ? '/shop/whole' : '/shop/present');
}

/** Takes the file of a whole shop into the store, as a copy; gives its name. The browser reads it as it is sent. */
export async function sendWholeShop(file: Blob): Promise<Outcome<string, string>> {
  try {
    const response = await fetch('/shop', { method: 'POST', headers: hostHeaders(), body: file });
    const { name, reason } = (await response.json()) as { name?: string; reason?: string };
    return name === undefined ? failed(reason ?? GONE) : succeeded(name);
  } catch {
    doubt.raise();
    return failed(GONE);
  }
}

/** Hands a file to the person through the browser's own way of saving. */
export function handOverBlob(content: Blob, fileName: string): void {
  const url = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  // Not at once: the download may begin only after this turn.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** Brings what a job made to the person: a desktop window asks where to, a browser takes it as a download. */
export async function deliver(job: string, fileName: string): Promise<Outcome<Delivered, string>> {
  const save = window.toeboardHost?.saveOutput;
  if (!save) {
    const content = await fetched(`/output/${job}`);
    if (!content.ok) return content;
    handOverBlob(content.value, fileName);
    return succeeded({ to: 'browser', fileName });
  }
  try {
    const saved = (await save(job)) as { state: string; path?: string; reason?: string };
    if (saved.state === 'written') return succeeded({ to: 'disk', path: saved.path ?? fileName });
    return saved.state === 'given-up' ? succeeded({ to: 'nowhere' }) : failed(saved.reason ?? GONE);
  } catch {
    doubt.raise();
    return failed(GONE);
  }
}

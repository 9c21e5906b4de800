import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { hostHeaders } from './client.ts';
import * as doubt from './doubt.ts';

/** A photo as the store took it: its hash, what it is, and its upright size, px; a PDF's pages have none of their own. */
export interface SentPhoto {
  readonly hash: string;
  readonly type: string;
  readonly width?: number;
  readonly height?: number;
}

const GONE = 'the program behind this window does not answer';

async function reasonOf(response: Response): Promise<string> {
  const body: unknown = await response.json().catch(() => null);
  const reason = typeof body === 'object' && body !== null && 'reason' in body ? body.reason : undefined;
  return typeof reason === 'string' ? reason : GONE;
}

const isDrawing = ({ type }: SentPhoto) => type === 'image/vnd.dxf' || type === 'image/svg+xml';

async function send(file: Blob): Promise<Outcome<SentPhoto, string>> {
  try {
    const response = await fetch('/photo', { method: 'POST', headers: hostHeaders(), body: file });
    return response.ok ? succeeded((await response.json()) as SentPhoto) : failed(await reasonOf(response));
  } catch {
    doubt.raise();
    return failed(GONE);
  }
}

/** Puts a photo's file into the store as it is. The failure ends a sentence that begins with the file's name. */
export async function sendPhoto(file: Blob): Promise<Outcome<SentPhoto, string>> {
  const sent = await send(file);
  return sent.ok && isDrawing(sent.value)
    ? failed('it is a drawing, not a photo; add it under Drawings')
    : sent;
}

/** The same of the file of a drawing, DXF or SVG: photos and drawings are kept alike. */
export async function sendDrawing(file: Blob): Promise<Outcome<SentPhoto, string>> {
  const sent = await send(file);
  return sent.ok && !isDrawing(sent.value) ? failed('it is a picture, not a drawing') : sent;
}

/** A photo's file from the store. */
export async function fetchPhoto(hash: string): Promise<Outcome<Blob, string>> {
  try {
    const response = await fetch(`/photo/${hash}`, { headers: hostHeaders() });
    return response.ok ? succeeded(await response.blob()) : failed(await reasonOf(response));
  } catch {
    doubt.raise();
    return failed(GONE);
  }
}

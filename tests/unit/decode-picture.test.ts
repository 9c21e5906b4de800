import { afterEach, expect, test, vi } from 'vitest';
import type { FromDecoder } from '../../src-renderer/pictures/decoder-messages.ts';
import { decodePicture } from '../../src-renderer/pictures/index.ts';
import { heicFile } from '../support/heif-files.ts';
import { pagesPdf } from '../support/pdf-files.ts';

/** A decoder as the page sees it: it hears a question and does as the test says. */
class StandIn {
  static readonly started: StandIn[] = [];
  readonly asked: unknown[] = [];
  ended = false;
  onmessage: ((event: { data: FromDecoder }) => void) | undefined;
  onerror: (() => void) | undefined;

  readonly address: URL;

  constructor(address: URL) {
    this.address = address;
    StandIn.started.push(this);
  }
  postMessage(question: unknown): void {
    this.asked.push(question);
  }
  terminate(): void {
    this.ended = true;
  }
}

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  StandIn.started.length = 0;
});

const decoder = () => vi.waitFor(() => StandIn.started[0] ?? Promise.reject(new Error('none is started')));

test('each file has a decoder of its own, by its bytes, which is ended with the answer', async () => {
  vi.stubGlobal('Worker', StandIn);
  const heic = decodePicture(new Blob([new Uint8Array(heicFile())]));
  const first = await decoder();
  expect(String(first.address)).toContain('heic-decoder-worker');
  const bitmap = {} as ImageBitmap;
  first.onmessage?.({ data: { ok: true, bitmap, pages: undefined } });
  expect(await heic).toEqual({ ok: true, value: { bitmap, pages: undefined } });
  expect(first.ended).toBe(true);

  StandIn.started.length = 0;
  const pdf = decodePicture(new Blob([new Uint8Array(pagesPdf(2))], { type: 'image/jpeg' }), { page: 2 });
  const second = await decoder();
  expect(String(second.address)).toContain('pdf-decoder-worker');
  expect(second.asked).toEqual([expect.objectContaining({ page: 2, size: undefined })]);
  second.onerror?.();
  expect(await pdf).toEqual({ ok: false, failure: 'its picture cannot be decoded' });
  expect(second.ended).toBe(true);
});

test('one that does not come to an end is ended, and the file refused', async () => {
  vi.stubGlobal('Worker', StandIn);
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  const endless = decodePicture(new Blob([new Uint8Array(heicFile())]));
  while (StandIn.started.length === 0) await new Promise((done) => setImmediate(done));
  const [only] = StandIn.started;
  vi.advanceTimersByTime(119_000);
  expect(only?.ended).toBe(false);
  vi.advanceTimersByTime(2_000);
  expect(await endless).toEqual({ ok: false, failure: 'it takes too long to decode' });
  expect(only?.ended).toBe(true);
});

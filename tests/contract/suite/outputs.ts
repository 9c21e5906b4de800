import { describe, expect, test, vi } from 'vitest';
import type { CallHost, Reply, Request } from '../../../src-main/api/contract.ts';
import { sampleLayout } from '../../support/host-sample.ts';
import { begin, type OpenSession } from '../../support/host-session.ts';
import { failure, value } from '../../support/host-transports.ts';
import { readPdf } from '../../support/read-pdf.ts';

type Wish = Request<'output.start'>['wish'];

async function started(call: CallHost, id: string, wish: Wish, preview = false): Promise<string> {
  const { job } = await value(call, 'output.start', { id, wish, unit: 'in', fraction: 16, preview });
  return job;
}

/** Asks until a job has come to its end, as the board does. */
async function ended(call: CallHost, job: string): Promise<Reply<'output.progress'>> {
  const end = async () => {
    const progress = await value(call, 'output.progress', { job });
    return progress.state !== 'waiting' && progress.state !== 'working' && progress;
  };
  return vi.waitUntil(end, { interval: 10, timeout: 60_000 });
}

const PRINT: Wish = { kind: 'print', print: 'sheet', paper: 'letter' };

export function outputTests(open: OpenSession): void {
  describe('what leaves the board', () => {
    test.each<[Wish, string, string, string]>([
      [{ kind: 'print', print: 'customer', paper: 'a4' }, '.pdf', 'application/pdf', '%PDF-'],
      [{ kind: 'print', print: 'measuring', paper: 'letter' }, '.pdf', 'application/pdf', '%PDF-'],
      [{ kind: 'drawing', view: 'side', format: 'svg' }, '.svg', 'image/svg+xml', '<?xml '],
      [{ kind: 'drawing', view: 'top', format: 'png', rooms: ['tyre'] }, '.png', 'image/png', '\x89PNG'],
      [{ kind: 'drawing', view: 'pictorial', format: 'png', turn: -30 }, '.png', 'image/png', '\x89PNG'],
      [{ kind: 'moving' }, '.html', 'text/html; charset=utf-8', '<!doctype html>'],
      [{ kind: 'drawing', view: '3d', format: 'dxf' }, '.dxf', 'image/vnd.dxf', '0\r\nSECTION'],
      [{ kind: 'table', table: 'travel' }, '.csv', 'text/csv; charset=utf-8', '\xef\xbb\xbfheave,'],
    ])('%j is made, and fetched with its name and kind', async (wish, ending, type, starts) => {
      const { call, photo } = await open();
      const { id } = await begin(call);
      const job = await started(call, id, wish);
      const told = await ended(call, job);
      expect(told).toMatchObject({ state: 'ready', reason: '', file: { type, parts: 1 } });
      expect(told.file?.fileName).toMatch(new RegExp(`^Roadster - Arm down - .*\\${ending}$`));
      const answer = await photo(`/output/${job}`);
      expect(answer.status).toBe(200);
      expect(answer.headers.get('content-type')).toBe(type);
      expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
      expect(answer.headers.get('content-disposition')).toContain('filename="Roadster - Arm down - ');
      const content = Buffer.from(await answer.arrayBuffer());
      expect(content.length).toBe(told.file?.bytes);
      const head = content
        .toString('latin1')
        .replaceAll(/^ +/g, '')
        .replaceAll(/\r\n|\n/g, '\r\n');
      expect(head.slice(0, starts.length)).toBe(starts);
    });

    test('the handbook is made as it is asked for, on either paper and no other', async () => {
      const { photo } = await open();
      for (const paper of ['letter', 'a4']) {
        const answer = await photo(`/output/handbook/${paper}`);
        expect(answer.status).toBe(200);
        expect(answer.headers.get('content-type')).toBe('application/pdf');
        const content = Buffer.from(await answer.arrayBuffer()).toString('latin1');
        expect(content.slice(0, 5)).toBe('%PDF-');
      }
      expect((await photo('/output/handbook/a5')).status).toBe(404);
    });

    test('another variant is shown beside it; a film tells its pictures as they are made, and is called off', async () => {
      const { call, photo } = await open();
      const { id, carId } = await begin(call);
      const { id: beside } = await value(call, 'variant.add', { carId, document: sampleLayout('Arm up') });
      const ask = { id, beside, unit: 'in', fraction: 16, preview: false } as const;
      const { job } = await value(call, 'output.start', { ...ask, wish: { kind: 'moving' } });
      expect((await ended(call, job)).state).toBe('ready');
      expect(await (await photo(`/output/${job}`)).text()).toContain('beside <bdi>Arm up</bdi>');
      const wish = { kind: 'film', over: 'roll', width: 480, seconds: 8 } as const;
      const { job: film } = await value(call, 'output.start', { ...ask, wish });
      const begun = async () => (await value(call, 'output.progress', { job: film })).done > 0;
      await vi.waitUntil(begun, { interval: 10, timeout: 60_000 });
      expect(await value(call, 'output.progress', { job: film })).toMatchObject({ of: 96, what: 'Picture' });
      await value(call, 'output.cancel', { job: film });
      expect((await ended(call, film)).state).toBe('called-off');
      const gone = await call('output.start', {
        ...ask,
        beside: 'no-such-variant',
        wish: { kind: 'moving' },
      });
      expect(gone.ok).toBe(false);
    });

    test('names bring no path and no sign along that a system or a header stumbles over', async () => {
      const { call, photo } = await open();
      const { customerId } = await begin(call);
      const { id: carId } = await value(call, 'car.add', { customerId, name: '../"Löwe"\r\nx: 1' });
      const { id } = await value(call, 'variant.add', { carId, document: sampleLayout('a/b\\c:*?') });
      const job = await started(call, id, { kind: 'table', table: 'points' });
      const { file } = await ended(call, job);
      expect(file?.fileName).not.toMatch(/[/\\:*?"<>|\r\n]/);
      const header = (await photo(`/output/${job}`)).headers.get('content-disposition') ?? '';
      const whole = /filename\*=UTF-8''(.+)$/.exec(header)?.[1] ?? '';
      expect(decodeURIComponent(whole)).toBe(file?.fileName);
    });

    test('the build sheet tells its pages as they are made; its preview has the same pages', async () => {
      const { call, photo } = await open();
      const { id } = await begin(call);
      const job = await started(call, id, PRINT);
      const told = await ended(call, job);
      expect(told.of).toBeGreaterThan(5);
      expect(told.done).toBe(told.of);
      expect(told.what).not.toBe('');
      const pdf = Buffer.from(await (await photo(`/output/${job}`)).arrayBuffer()).toString('latin1');
      const pages = Number(/\/Type \/Pages\n\/Count (\d+)/.exec(pdf)?.[1]);

      const look = await started(call, id, PRINT, true);
      const { file } = await ended(call, look);
      expect(file?.parts).toBe(pages);
      const first = await photo(`/output/${look}/0`);
      expect(first.headers.get('content-type')).toBe('image/svg+xml');
      expect(await first.text()).toContain('width="279.4mm" height="215.9mm"');
      expect((await photo(`/output/${look}/${pages}`)).status).toBe(404);
    });

    test('each print that shows the layout counts once it is whole: as a new revision where the layout has changed', async () => {
      const { call, photo } = await open();
      const { id } = await begin(call);
      const customer: Wish = { kind: 'print', print: 'customer', paper: 'letter' };
      const printedAs = async (wish: Wish) => {
        const job = await started(call, id, wish);
        await ended(call, job);
        const bytes = new Uint8Array(await (await photo(`/output/${job}`)).arrayBuffer());
        return readPdf(bytes, ([page]) =>
          /REVISION (\d+) CONTENT ([0-9a-f]{8})/.exec(page?.text ?? '')?.slice(1),
        );
      };
      // Neither a look nor a print that is called off counts.
      await ended(call, await started(call, id, customer, true));
      const off = await started(call, id, PRINT);
      await value(call, 'output.cancel', { job: off });
      await value(call, 'settings.set', { drawnBy: 'Thessaly Marrow' });
      const first = await printedAs(customer);
      expect(first?.[0]).toBe('1');
      expect(await printedAs({ kind: 'print', print: 'templates', paper: 'a4' })).toEqual(first);
      await value(call, 'variant.rename', { id, name: 'Arm up' });
      const second = await printedAs(customer);
      expect(second?.[0]).toBe('2');
      expect(second?.[1]).not.toBe(first?.[1]);
    });

    test('can be called off; then there is nothing to fetch, and the next is made', async () => {
      const { call, photo } = await open();
      const { id } = await begin(call);
      const jobs = [await started(call, id, PRINT), await started(call, id, PRINT)];
      for (const job of jobs) await value(call, 'output.cancel', { job });
      for (const job of jobs) {
        expect(await value(call, 'output.progress', { job })).toMatchObject({
          state: 'called-off',
          file: null,
        });
        expect((await photo(`/output/${job}`)).status).toBe(404);
      }
      const next = await started(call, id, { kind: 'table', table: 'turn' });
      expect((await ended(call, next)).state).toBe('ready');
    });

    test('the host answers other calls while it is made', async () => {
      const { call } = await open();
      const { id } = await begin(call);
      const job = await started(call, id, PRINT);
      let answered = 0;
      for (; answered < 500; answered += 1) {
        await value(call, 'settings.get', {});
        const { state } = await value(call, 'output.progress', { job });
        if (state === 'ready') break;
        // Lets the work go on where calls come without a wire between.
        await new Promise((done) => setImmediate(done));
      }
      expect(answered).toBeGreaterThan(0);
      expect((await ended(call, job)).state).toBe('ready');
    });

    test('says in one sentence why there is none', async () => {
      const { call, photo } = await open();
      const { id } = await begin(call);
      const far = await started(call, id, { kind: 'drawing', view: 'side', format: 'svg', heave: 1500 });
      expect(await ended(call, far)).toMatchObject({
        state: 'failed',
        reason: 'the links leave the axle free to move, so no pose is drawn',
        file: null,
      });
      const gone = '00000000-0000-4000-8000-000000000000';
      expect(await failure(call, 'output.progress', { job: gone })).toBe(
        'not-found: this output is no longer kept: make it again',
      );
      await value(call, 'output.cancel', { job: gone });
      for (const path of [`/output/${gone}`, '/output', '/output/x', `/output/${gone}/../../secret.json`])
        expect((await photo(path)).status).toBe(404);
      const wish = { kind: 'drawing', view: 'turn', format: 'dxf' };
      expect(await failure(call, 'output.start', { id, wish, unit: 'in', fraction: 16 })).toMatch(
        /^bad-request: output\.start: wish\.format: curves are drawn as svg or png, not as dxf/,
      );
      expect(
        await failure(call, 'output.start', { id: gone, wish: PRINT, unit: 'in', fraction: 16 }),
      ).toMatch(/^not-found: /);
    });
  });
}

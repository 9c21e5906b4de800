import { describe, expect, test, vi } from 'vitest';
import type { CallHost } from '../../../src-main/api/contract.ts';
import type { OpenSession } from '../../support/host-session.ts';
import { failure, value } from '../../support/host-transports.ts';
import { greyPng } from '../../support/picture-files.ts';
import { readPdf } from '../../support/read-pdf.ts';

const SPLINE = {
  customer: 'Quick Kim',
  note: 'Rings back on Friday',
  question: {
    kind: 'spline',
    over: 'circle',
    fromPhoto: false,
    outsideDiameter: 19.58,
    counted: 36,
    whose: 'box',
  },
  headline: '36 teeth on 0.771 in.',
} as const;
const SHAFT = {
  customer: '',
  note: '',
  question: { kind: 'shaft', by: 'distances', apart: 762, lower: 250 },
  headline: 'Two joints.',
} as const;
const IN_INCHES = { unit: 'in', fraction: 16 } as const;

const names = async (call: CallHost) =>
  (await value(call, 'ticket.list', {})).tickets.map(({ customer, headline }) => `${customer}: ${headline}`);

export function ticketTests(open: OpenSession): void {
  describe('tickets of the counter', () => {
    test('are kept whole, saved anew, newest first, and there at the next start', async () => {
      const { call, reopen } = await open();
      const kept = await value(call, 'ticket.add', SPLINE);
      expect(kept).toMatchObject({ ...SPLINE, revision: 1, variantId: null });
      await value(call, 'ticket.add', SHAFT);
      const { id } = kept;
      expect(await value(call, 'ticket.save', { id, revision: 1, ...SPLINE, note: 'Rang back' })).toEqual({
        revision: 2,
      });
      // Another window that still has the first state may not overwrite it; the same once more is no fault.
      expect(await failure(call, 'ticket.save', { id, revision: 1, ...SPLINE, note: 'Never rang' })).toBe(
        'changed-elsewhere: this ticket has been changed in another window',
      );
      await value(call, 'ticket.save', { id, revision: 1, ...SPLINE, note: 'Rang back' });
      const again = await reopen();
      expect(await names(again)).toEqual([': Two joints.', 'Quick Kim: 36 teeth on 0.771 in.']);
      expect((await value(again, 'ticket.list', {})).tickets[1]).toEqual({
        ...kept,
        note: 'Rang back',
        revision: 2,
      });
    });

    test('keep the photo by which teeth are counted, at the next start and in another shop too', async () => {
      const { call, photo, reopen } = await open();
      const file = greyPng(91, 40, 30);
      const { hash } = (await (await photo('/photo', new Uint8Array(file))).json()) as { hash: string };
      const marked = { hash, centre: [20, 15], rim: [[31.5, 15]] } as const;
      const question = { ...SPLINE.question, fromPhoto: true, photo: marked } as const;
      const wrong = { ...question, photo: { ...marked, hash: 'none' } } as never;
      expect(await failure(call, 'ticket.add', { ...SPLINE, question: wrong })).toMatch(
        /^bad-request: .*hash/,
      );
      const kept = await value(call, 'ticket.add', { ...SPLINE, question } as never);
      const whole = Buffer.from(await (await photo('/shop/whole')).arrayBuffer());
      // An older program, which knows of no such photo, refuses the file by its version.
      expect(JSON.parse(whole.toString('utf8').split('\n')[0] ?? '')).toMatchObject({ version: 5 });
      expect((await value(await reopen(), 'ticket.list', {})).tickets).toEqual([kept]);
      expect(kept.question).toEqual(question);

      const other = await open();
      const { name } = (await (await other.photo('/shop', whole)).json()) as { name: string };
      await value(other.call, 'copies.restore', { name });
      expect((await value(other.call, 'ticket.list', {})).tickets).toEqual([kept]);
      const arrived = await other.photo(`/photo/${hash}`);
      expect(arrived.headers.get('content-type')).toBe('image/png');
      expect(Buffer.from(await arrived.arrayBuffer()).equals(file)).toBe(true);
    });

    test('lie in the bin until it is emptied, and come back from it', async () => {
      const { call } = await open();
      const { id } = await value(call, 'ticket.add', SPLINE);
      await value(call, 'bin.put', { kind: 'ticket', id });
      expect(await names(call)).toEqual([]);
      expect(await failure(call, 'ticket.save', { id, revision: 1, ...SPLINE })).toMatch(/^not-found: /);
      expect((await value(call, 'bin.list', {})).entries).toMatchObject([
        { kind: 'ticket', id, name: SPLINE.headline, from: 'Quick Kim' },
      ]);
      await value(call, 'bin.restore', { kind: 'ticket', id });
      expect(await names(call)).toHaveLength(1);
      await value(call, 'bin.put', { kind: 'ticket', id });
      await value(call, 'bin.empty', {});
      expect(await failure(call, 'bin.restore', { kind: 'ticket', id })).toMatch(/^not-found: /);
    });

    test('become a car of that customer, all of it or nothing, and know which', async () => {
      const { call } = await open();
      const { id } = await value(call, 'ticket.add', SPLINE);
      const make = { id, carName: 'Roadster', ...IN_INCHES };
      const { variantId } = await value(call, 'ticket.makeCar', make);
      const { document, carName, customerName } = await value(call, 'variant.open', { id: variantId });
      expect([customerName, carName]).toEqual(['Quick Kim', 'Roadster']);
      expect(document.shaft?.box.fit).toMatchObject({ kind: 'spline', teeth: 36 });
      expect(document.notes).toContain('Rings back on Friday');
      expect((await value(call, 'ticket.list', {})).tickets[0]?.variantId).toBe(variantId);
      // A second car of the same name gets another, under the customer that is there.
      await value(call, 'ticket.makeCar', make);
      const { customers } = await value(call, 'shop.read', {});
      expect(customers.map(({ name, cars }) => [name, cars.map((car) => car.name)])).toEqual([
        ['Quick Kim', ['Roadster', 'Roadster 2']],
      ]);
      // Of nothing said nothing is made: no customer, no car.
      const { id: bare } = await value(call, 'ticket.add', {
        ...SHAFT,
        question: { kind: 'shaft', by: 'distances' },
      });
      expect(await failure(call, 'ticket.makeCar', { ...make, id: bare })).toMatch(
        /^refused-document: Ask how far/,
      );
      expect((await value(call, 'shop.read', {})).customers).toEqual(customers);
    });

    test('print as one page, with what was said, what it comes to, the day and the cautions', async () => {
      const { call, photo } = await open();
      const { id } = await value(call, 'ticket.add', SPLINE);
      const { job } = await value(call, 'ticket.print', { id, paper: 'letter', ...IN_INCHES });
      const end = async () => {
        const progress = await value(call, 'output.progress', { job });
        return progress.state !== 'waiting' && progress.state !== 'working' && progress;
      };
      const { state, file } = await vi.waitUntil(end, { interval: 10, timeout: 60_000 });
      expect(state).toBe('ready');
      expect(file?.fileName).toBe('Quick Kim - Which spline - Counter ticket.pdf');
      const content = new Uint8Array(await (await photo(`/output/${job}`)).arrayBuffer());
      await readPdf(content, (pages) => {
        expect(pages).toHaveLength(1);
        const text = pages[0]?.text ?? '';
        for (const words of [
          'Which spline is this?',
          'Quick Kim',
          'Rings back on Friday',
          '36 teeth',
          'Cautions',
          'certifies nothing',
          new Date().toISOString().slice(0, 4),
        ])
          expect(text).toContain(words);
      });
    });

    test('go along in the file of the whole shop and in copies, and come back the same', async () => {
      const { call, photo } = await open();
      const { id } = await value(call, 'ticket.add', SPLINE);
      await value(call, 'ticket.makeCar', { id, carName: 'Roadster', ...IN_INCHES });
      const { id: binned } = await value(call, 'ticket.add', SHAFT);
      await value(call, 'bin.put', { kind: 'ticket', id: binned });
      const { tickets } = await value(call, 'ticket.list', {});
      const text = Buffer.from(await (await photo('/shop/whole')).arrayBuffer());
      expect(JSON.parse(text.toString('utf8').split('\n')[0] ?? '')).toMatchObject({ version: 4 });

      const other = await open();
      const { name } = (await (await other.photo('/shop', text)).json()) as { name: string };
      expect(await value(other.call, 'copies.look', { name })).toMatchObject({ tickets: 1, layouts: 1 });
      await value(other.call, 'copies.restore', { name });
      expect((await value(other.call, 'ticket.list', {})).tickets).toEqual(tickets);
      expect((await value(other.call, 'bin.list', {})).entries).toMatchObject([
        { kind: 'ticket', id: binned },
      ]);
    });
  });
}

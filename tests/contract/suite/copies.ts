import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { sampleLayout } from '../../support/host-sample.ts';
import { begin, drawer, labels, type OpenSession } from '../../support/host-session.ts';
import { failure, value } from '../../support/host-transports.ts';
import { greyPng } from '../../support/picture-files.ts';
import { photographedLayout } from './photos.ts';

const bytes = (text: string) => new Uint8Array(Buffer.from(text));

/** A file of a shop that was changed, with a last line that fits it again. */
function resummed(text: string): string {
  const before = text.slice(0, text.lastIndexOf('{"end"'));
  const sha256 = createHash('sha256').update(before).digest('hex');
  return `${before}${JSON.stringify({ end: { lines: before.split('\n').length - 1, sha256 } })}\n`;
}

export function copyTests(open: OpenSession): void {
  /** A shop with something of everything in it. */
  async function filledShop() {
    const session = await open();
    const { call, photo } = session;
    const { carId, id } = await begin(call);
    const picture = greyPng();
    const hash = createHash('sha256').update(picture).digest('hex');
    await photo('/photo', new Uint8Array(picture));
    await value(call, 'variant.add', { carId, document: photographedLayout(hash, 'Traced') });
    await value(call, 'settings.set', { unit: 'mm', limits: {} });
    await value(call, 'variant.save', {
      id,
      document: sampleLayout('Arm down', 300),
      revision: 1,
      step: 's',
      label: 'Drag',
    });
    await value(call, 'survey.save', {
      carId,
      survey: {
        survey: {
          format: 'toeboard-survey',
          version: 1,
          rows: [{ id: 'hub-height', kind: 'up', of: 'axle.left.wheelCentre', value: 331 }],
        },
        taken: { 'hub-height': { way: 'plain', typed: '13', figure: 331 } },
      },
      revision: 0,
    });
    const { id: binned } = await value(call, 'variant.duplicate', { id });
    await value(call, 'bin.put', { kind: 'variant', id: binned });
    return { ...session, id, carId, hash, picture };
  }

  async function shopFile(photo: (path: string) => Promise<Response>, path = '/shop/whole'): Promise<string> {
    const response = await photo(path);
    expect(response.status).toBe(200);
    return response.text();
  }

  test('the whole shop goes into one file and comes back elsewhere as it was', async () => {
    const { call, photo, id, carId, hash, picture } = await filledShop();
    const text = await shopFile(photo);
    const lines = text.trimEnd().split('\n');
    const last = lines.at(-1) ?? '';
    expect(JSON.parse(lines[0] ?? '')).toMatchObject({ format: 'toeboard-shop', version: 2, history: true });
    // By the tool that every system has for it, over all bytes before the last line.
    const sha256 = createHash('sha256')
      .update(text.slice(0, text.length - last.length - 1))
      .digest('hex');
    expect(JSON.parse(last)).toEqual({ end: { lines: lines.length - 1, sha256 } });

    const other = await open();
    const sent = await other.photo('/shop', bytes(text));
    expect(sent.status).toBe(200);
    const { name } = (await sent.json()) as { name: string };
    // Nothing has changed yet: it is a copy to be looked at.
    expect(await drawer(other.call)).toEqual([]);
    expect(await value(other.call, 'copies.look', { name })).toMatchObject({
      customers: [{ name: 'Odd Fellow', cars: [{ name: 'Roadster', layouts: 2 }] }],
      layouts: 2,
      photos: 1,
    });
    await value(other.call, 'copies.restore', { name });
    expect(await drawer(other.call)).toEqual(await drawer(call));
    expect(await value(other.call, 'variant.open', { id })).toEqual(
      await value(call, 'variant.open', { id }),
    );
    expect(await labels(other.call, id)).toEqual(await labels(call, id));
    expect((await value(other.call, 'survey.read', { carId })).survey.survey.rows).toEqual([
      { id: 'hub-height', kind: 'up', of: 'axle.left.wheelCentre', value: 331 },
    ]);
    expect((await value(other.call, 'settings.get', {})).unit).toBe('mm');
    expect((await value(other.call, 'bin.list', {})).entries).toHaveLength(1);
    expect(Buffer.from(await (await other.photo(`/photo/${hash}`)).arrayBuffer()).equals(picture)).toBe(true);
    // And what is written again is the same, but for the moment of it.
    const again = (await shopFile(other.photo)).trimEnd().split('\n');
    expect(again.slice(1, -1).sort()).toEqual(lines.slice(1, -1).sort());
    expect((await value(other.call, 'copies.list', {})).copies.map(({ kind }) => kind)).toContain('file');
  });

  /** Labels of the states of a layout in a file, oldest first. */
  const labelsIn = (text: string, layout: string) =>
    text
      .split('\n')
      .filter((line) => line.startsWith('{"state"'))
      .map((line) => (JSON.parse(line) as { state: { layout: string; label: string } }).state)
      .filter((state) => state.layout === layout)
      .map(({ label }) => label);

  test('without history the file holds the layouts alone', async () => {
    const { photo, id } = await filledShop();
    const text = await shopFile(photo, '/shop/present');
    expect(JSON.parse(text.slice(0, text.indexOf('\n')))).toMatchObject({ history: false });
    expect(labelsIn(text, id)).toEqual([]);
    expect(text).toContain('{"layout"');
    for (const path of ['other', 'newest', 'newest/', 'newest/0', 'newest/-1', 'newest/1.5', 'newest/99999'])
      expect((await photo(`/shop/${path}`)).status, path).toBe(404);
    const other = await open();
    const { name } = (await (await other.photo('/shop', bytes(text))).json()) as { name: string };
    expect(await value(other.call, 'copies.look', { name })).toMatchObject({ layouts: 2, states: 0 });
  });

  test('the newest states of each layout go along, as many as asked for, and come back as these', async () => {
    const { call, photo, id } = await filledShop();
    for (let save = 2; save < 8; save += 1)
      await value(call, 'variant.save', {
        id,
        document: sampleLayout('Arm down', 300 + save),
        revision: save,
        step: `step ${save}`,
        label: `Drag ${save}`,
      });
    expect(labelsIn(await shopFile(photo), id)).toHaveLength(8);
    const text = await shopFile(photo, '/shop/newest/3');
    expect(JSON.parse(text.slice(0, text.indexOf('\n')))).toMatchObject({ history: true });
    expect(labelsIn(text, id)).toEqual(['Drag 5', 'Drag 6', 'Drag 7']);
    // The other layouts have fewer states than that: all of them go along.
    expect(text.match(/\{"state"/g)).toHaveLength(3 + 1 + 1);
    const other = await open();
    const { name } = (await (await other.photo('/shop', bytes(text))).json()) as { name: string };
    expect(await value(other.call, 'copies.look', { name })).toMatchObject({ layouts: 2, states: 4 });
    await value(other.call, 'copies.restore', { name });
    expect(await labels(other.call, id)).toEqual(['Drag 7', 'Drag 6', 'Drag 5']);
    expect(await value(other.call, 'variant.open', { id })).toEqual(
      await value(call, 'variant.open', { id }),
    );
  });

  test('names as long as names may be come along, in every label that tells of them', async () => {
    const { call, photo, id } = await filledShop();
    const long = 'n'.repeat(200);
    await value(call, 'variant.rename', { id, name: long });
    await value(call, 'variant.duplicate', { id });
    const text = await shopFile(photo);
    const other = await open();
    expect((await other.photo('/shop', bytes(text))).status).toBe(200);
    expect((await labels(call, id))[0]).toMatch(/^Renamed to n{180,}…$/);
  });

  test('a file of a shop that is cut off, changed, foreign or broken is refused in a line, and leaves nothing', async () => {
    const { photo } = await filledShop();
    const text = await shopFile(photo);
    const { call, photo: send } = await open();
    const refusals: [string, RegExp][] = [
      [text.slice(0, text.length / 2), /is not JSON$|breaks off/],
      [text.slice(0, text.lastIndexOf('{"end"')), /^it breaks off before its end$/],
      [
        text.replace('Odd Fellow', 'Odd Yellow'),
        /^it was changed or damaged after it was written: its sum does not fit$/,
      ],
      [`${text}{}\n`, /^something follows its last line$/],
      [text.replace('"version":2', '"version":9'), /^it is version 9, newer than this program reads \(5\)/],
      // Changed as a whole, so that its sum fits: it is the line itself that is refused.
      [resummed(text.replace('"history":true', '"history":0')), /^line 1: history/],
      [resummed(text.replace(/"label":"[^"]*"/, `"label":"${'x'.repeat(201)}"`)), /^line \d+: state.label/],
      [text.replace('"customer":{', '"customer":{"more":1,'), /^line 2: /],
      ['['.repeat(100_000), /^this is not the file of a whole shop$/],
      [JSON.stringify(sampleLayout()), /^this is not the file of a whole shop$/],
      ['', /^it breaks off before its end$/],
    ];
    for (const [broken, reason] of refusals) {
      const answer = await send('/shop', bytes(broken));
      expect(answer.status, broken.slice(0, 60)).toBe(422);
      expect(((await answer.json()) as { reason: string }).reason).toMatch(reason);
    }
    expect((await value(call, 'copies.list', {})).copies).toEqual([]);
    expect(await drawer(call)).toEqual([]);
  });

  test('a copy that is not there is refused', async () => {
    const { call } = await open();
    for (const name of ['copies.look', 'copies.restore'] as const)
      expect(await failure(call, name, { name: '../toeboard.sqlite' })).toBe(
        'not-found: this copy is no longer there',
      );
  });

  test('a car that is taken to another shop keeps the name of its customer', async () => {
    const { call } = await open();
    const { carId } = await begin(call);
    const { text, fileName } = await value(call, 'file.exportCar', { id: carId });
    const other = await open();
    await value(other.call, 'file.import', { text, fileName });
    expect(await drawer(other.call)).toEqual(['Odd Fellow', '  Roadster', '    Arm down']);
    // A second car of the same customer goes to the same one.
    await value(other.call, 'file.import', { text, fileName });
    expect((await drawer(other.call)).filter((line) => !line.startsWith(' '))).toEqual(['Odd Fellow']);
  });
}

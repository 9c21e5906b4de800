import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
import type { PageData } from '../../../shared-math/moving/index.ts';
import { movingPage } from '../../../src-main/output/moving/moving-page.ts';
import { DEMONSTRATIONS, demonstration } from '../../support/demonstration-files.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';

const LARGEST = 400_000;

const jobOf = (document: LayoutDocument) =>
  ({
    document,
    customer: 'Odile Farrowby',
    car: 'Two-seater',
    unit: 'in',
    fraction: 16,
    date: new Date(2026, 2, 14, 12),
  }) as const;

const pageOf = async (job: Parameters<typeof movingPage>[0]) =>
  Buffer.from(await movingPage(job)).toString('utf8');

/** What stands between the tags of an element, each time that it comes. */
const within = (page: string, name: string) =>
  [...page.matchAll(new RegExp(`<${name}(?: [^>]*)?>([\\s\\S]*?)</${name}>`, 'g'))].map(
    ([, inside]) => inside as string,
  );

describe('the page that moves', () => {
  test.each(DEMONSTRATIONS)(
    'of %s is one file of at most 400 kB that asks nothing of anywhere',
    async (_, document) => {
      const page = await pageOf({ ...jobOf(document), beside: document });
      expect(Buffer.byteLength(page)).toBeLessThanOrEqual(LARGEST);
      // No address but those of names in XML, and nothing fetched: no link, no source, no import.
      expect(page.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(
        /https?:|\ssrc=|<link|@import|url\((?!data:)/,
      );
      expect(page).toMatch(/^<!doctype html>\n<html lang="en">/);
      const [, script = ''] = within(page, 'script');
      expect(/NaN|Infinity|undefined/.exec(page.replace(script, ''))?.[0]).toBeUndefined();
    },
  );

  test('lets run its own script and style alone, by their hashes (CSP Level 3, 6.7.2)', async () => {
    const page = await pageOf(jobOf(demonstration('hairpins-box-too-low')));
    const policy = /<meta http-equiv="Content-Security-Policy" content="([^"]+)">/.exec(page)?.[1] ?? '';
    const hash = (source: string) => `'sha256-${createHash('sha256').update(source).digest('base64')}'`;
    const [style] = within(page, 'style');
    const script = within(page, 'script').at(-1);
    expect(policy.split('; ')).toEqual([
      "default-src 'none'",
      `script-src ${hash(script as string)}`,
      `style-src ${hash(style as string)}`,
      'font-src data:',
      "base-uri 'none'",
      "form-action 'none'",
    ]);
    // It stands before anything that it is to hold for, and no element brings a style or a handler of its own.
    expect(page.indexOf('Content-Security-Policy')).toBeLessThan(page.indexOf('<style'));
    expect(page.replace(script as string, '')).not.toMatch(/\sstyle=|\son[a-z]+=/);
  });

  test('says without its script what the bad layout does', async () => {
    const page = await pageOf(jobOf(demonstration('hairpins-box-too-low')));
    for (const words of [
      'Both wheels 2 in up: the wheels steer themselves 2.44° to the right.',
      'Both wheels hit a 2 in bump',
      'One wheel hits a 2 in bump',
      'Steering parts fail dangerously',
      'Made from',
    ])
      expect(page).toContain(words);
    expect(within(page, 'svg')[0]?.match(/<path /g)?.length).toBeGreaterThan(100);
    expect(page).toMatch(/role="img" aria-labelledby="picture-said"><title id="picture-said">The front axle/);
  });

  test('of a car that cannot be posed it shows the drawing, and says so where the figures would be', async () => {
    const free = documentOf(
      rawLayout({ location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' } }),
    );
    const page = await pageOf({ ...jobOf(free), beside: demonstration('hairpins-side-steer') });
    expect(page).toContain('the links leave the axle free to move');
    expect(page).toContain('a link does not reach');
    expect(within(page, 'svg')[0]?.match(/<path /g)?.length).toBeGreaterThan(50);
    const [, script = ''] = within(page, 'script');
    expect(page.replace(script, '')).not.toMatch(/NaN|Infinity|undefined/);
  });

  test('carries neither notes nor photos nor names of a layout, and what it carries is the layout itself', async () => {
    const document = { ...demonstration('hairpins-box-too-low'), notes: 'Owes us for the axle.' };
    const page = await pageOf(jobOf(document));
    expect(page).not.toContain('Owes us');
    const data = JSON.parse(within(page, 'script')[0] as string) as PageData;
    expect(data.cars[0]?.layout.steering).toEqual(document.steering);
    expect(data.start).toEqual({ heave: 50.8, roll: 0, handwheel: 0 });
  });

  test('hostile names stand in it as harmless text', async () => {
    const hostile = `</script><script>alert(1)</script>"'><img src=x onerror=alert(2)> \u202Eevil\u2028 <!-- & ${'x'.repeat(40)}`;
    const document = { ...demonstration('hairpins-side-steer'), name: hostile };
    const page = await pageOf({
      ...jobOf(document),
      customer: hostile,
      car: hostile,
      beside: { ...document, name: `${hostile}2` },
    });
    const plain = await pageOf({ ...jobOf(document), customer: 'a', car: 'b', beside: document });
    const tags = (text: string) => (text.match(/<[a-z!/]/gi) ?? []).length;
    // As many tags as with harmless names, but for the line that names the customer.
    expect(Math.abs(tags(page) - tags(plain))).toBeLessThanOrEqual(2);
    expect(page).not.toMatch(/<img|<script>alert|\u202E|\u2028/);
    expect(page).toContain('&lt;/script&gt;');
    expect(within(page, 'script')).toHaveLength(2);
    const data = JSON.parse(within(page, 'script')[0] as string) as PageData;
    expect(data.cars[0]?.name).toBe(hostile.replaceAll(/[\u202E\u2028 ]+/g, ' '));
  });
});

import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { expectClose } from '../support/close.ts';
import { toeboard } from '../support/command-line.ts';
import { rawLayout } from '../support/layouts.ts';

const folder = mkdtempSync(join(tmpdir(), 'toeboard-sit-'));
function file(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(content));
  return path;
}
const LEAF = 'projects/parallel-leaf-cross-steer.json';

test('prints the layout at its new ride height, which reads as any other and goes on from there', async () => {
  const { code, out, err } = await toeboard('sit', LEAF, '--front', '25.4');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const answer = JSON.parse(out);
  expect(answer).toMatchObject({ format: 'toeboard-sit', version: 1, front: 25.4, rear: 0 });
  expect(answer.layout.sits).toEqual({ front: 25.4, rear: 0 });
  const path = file('sits.json', answer.layout);
  const swept = await toeboard('sweep', path, '--heave', '0');
  expect(swept.code).toBe(0);
  // Straight ahead at the new ride height: the drag link was set so.
  expectClose(JSON.parse(swept.out).rows[0].meanSteer, 0, 1e-4);
  const back = JSON.parse((await toeboard('sit', path, '--front=-25.4')).out);
  expect(back.layout.sits).toBeUndefined();
});

test('a load settles the front by the springs’ rate, by hand', async () => {
  const path = file('ride.json', rawLayout({ ride: { spring: { kind: 'rate', rate: 40 } } }));
  const answer = JSON.parse((await toeboard('sit', path, '--load', '1200')).out);
  expectClose(answer.front, 1200 / 80, 1e-9);
});

test('over heights it prints a row each, and says why one cannot be', async () => {
  const { code, out } = await toeboard('sit', LEAF, '--over=-200:25:75', '--csv');
  expect(code).toBe(0);
  const [head, ...rows] = out.trimEnd().split('\n');
  expect(head).toBe('front,rear,status,worstBumpSteer,slope,caster,bump,droop,dragLinkBy');
  expect(rows).toHaveLength(4);
  expect(rows[0]).toBe('-200,0,no-droop,,,,,,');
  expect(rows[3]?.split(',')[2]).toBe('ok');
});

test('refuses what cannot be, by file and reason', async () => {
  const deep = await toeboard('sit', LEAF, '--front', '300');
  expect(deep.code).toBe(1);
  expect(deep.err).toMatch(/past the end of its bump/);
  expect((await toeboard('sit', LEAF, '--front', '10', '--load', '10')).code).toBe(2);
  expect((await toeboard('sit', LEAF, '--csv')).code).toBe(2);
});

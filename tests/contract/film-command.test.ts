import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { startedToeboard, toeboard } from '../support/command-line.ts';
import { testFolder } from '../support/host-folder.ts';

const BAD = 'projects/hairpins-box-too-low.json';
const GOOD = 'projects/hairpins-side-steer.json';

describe('film', () => {
  test('writes a film of the size, way and length asked for, and says so', async () => {
    const out = join(testFolder(), 'turn.png');
    const answer = await toeboard('film', BAD, '--out', out, '--over', 'steering', '--seconds', '2');
    expect(answer).toMatchObject({ code: 0, err: '' });
    const bytes = readFileSync(out);
    expect(JSON.parse(answer.out)).toEqual({
      format: 'toeboard-film',
      version: 1,
      layout: 'Side steer, box too low',
      over: 'steering',
      width: 480,
      seconds: 2,
      file: out,
      bytes: bytes.length,
    });
    expect(bytes.readUInt32BE(16)).toBe(480);
  });

  test('refuses another kind of file, a size that is none, and a layout that is none beside it', async () => {
    const folder = testFolder();
    const out = join(folder, 'x.png');
    expect(await toeboard('film', BAD, '--out', join(folder, 'x.gif'))).toMatchObject({ code: 2 });
    expect(await toeboard('film', BAD, '--out', out, '--width', '481')).toMatchObject({ code: 2 });
    const other = join(folder, 'other.json');
    writeFileSync(other, '{}');
    const { code, err } = await toeboard('film', BAD, '--out', out, '--beside', other);
    expect([code, err.includes('other.json')]).toEqual([1, true]);
    expect(existsSync(out)).toBe(false);
  });
});

describe('the page that moves', () => {
  test('is written by sheet, run from source as a program of its own', async () => {
    const out = join(testFolder(), 'page.html');
    const answer = await startedToeboard(['sheet', GOOD, '--kind', 'moving', '--beside', BAD, '--out', out]);
    expect(answer).toMatchObject({ code: 0, err: '' });
    const page = readFileSync(out, 'utf8');
    expect(JSON.parse(answer.out)).toMatchObject({ kind: 'moving', bytes: Buffer.byteLength(page) });
    expect(page).toContain('Side steer, box too low');
  });

  test('another layout beside it is for what can show both', async () => {
    const out = join(testFolder(), 'x.pdf');
    expect(await toeboard('sheet', GOOD, '--beside', BAD, '--out', out)).toMatchObject({ code: 2 });
    expect(existsSync(out)).toBe(false);
  });
});

describe('draw --view pictorial', () => {
  test('draws the car in space from where it is asked, and takes no turn for another view', async () => {
    const folder = testFolder();
    const drawn = async (...more: string[]) => {
      const out = join(folder, 'space.svg');
      const answer = await toeboard('draw', BAD, '--view', 'pictorial', '--out', out, ...more);
      expect(answer).toMatchObject({ code: 0, err: '' });
      return readFileSync(out, 'utf8');
    };
    const usual = await drawn();
    expect(usual).toContain('seen from ahead 45.0° round to its left and 35.3° above level');
    const turned = await drawn('--turn', '-30', '--rise', '20', '--heave', '50.8');
    expect(turned).toContain('seen from ahead 30.0° round to its right and 20.0° above level');
    expect(turned).toContain('2 in of bump');
    const out = join(folder, 'side.svg');
    expect(await toeboard('draw', BAD, '--view', 'side', '--turn', '10', '--out', out)).toMatchObject({
      code: 2,
    });
    expect(await toeboard('draw', BAD, '--view', 'pictorial', '--out', join(folder, 'a.dxf'))).toMatchObject({
      code: 2,
    });
  });
});

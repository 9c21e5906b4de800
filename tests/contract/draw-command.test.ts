import { execFile } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { startedToeboard, toeboard } from '../support/command-line.ts';
import { testFolder } from '../support/host-folder.ts';
import { sampleLayout } from '../support/host-sample.ts';

const root = resolve(import.meta.dirname, '../..');

function layoutIn(folder: string): string {
  const file = join(folder, 'layout.json');
  writeFileSync(file, JSON.stringify(sampleLayout()));
  return file;
}

describe('draw', () => {
  test('makes the kind that the file’s ending says, and tells what it wrote', async () => {
    const folder = testFolder();
    const layout = layoutIn(folder);
    for (const [name, starts] of [
      ['side.DXF', '0\nSECTION'],
      ['side.svg', '<?xml version="1.0"'],
      ['side.png', '\x89PNG'],
    ] as const) {
      const out = join(folder, name);
      const answer = await toeboard('draw', layout, '--view', 'side', '--out', out, '--unit', 'mm');
      expect(answer).toMatchObject({ code: 0, err: '' });
      const written = readFileSync(out);
      expect(
        written
          .toString('latin1')
          .replaceAll(/\r|^ +/gm, '')
          .slice(0, starts.length),
      ).toBe(starts);
      expect(JSON.parse(answer.out)).toEqual({
        format: 'toeboard-drawing',
        version: 1,
        layout: 'Arm down',
        view: 'side',
        kind: name.slice(-3).toLowerCase(),
        unit: 'mm',
        file: out,
        bytes: written.length,
      });
    }
  });

  test('draws a car with its brakes on wound up, and says so', async () => {
    const folder = testFolder();
    const drawn = async (...more: string[]) => {
      const out = join(folder, 'braked.svg');
      const leaves = join(root, 'projects/parallel-leaf-cross-steer.json');
      const answer = await toeboard('draw', leaves, '--view', 'side', '--out', out, ...more);
      expect(answer).toMatchObject({ code: 0, err: '' });
      return readFileSync(out, 'utf8');
    };
    const [off, on] = [await drawn(), await drawn('--braking', '0.5')];
    expect(off).toContain('at ride height');
    expect(on).toContain('braking at 0.50 g');
    expect(on).not.toContain('at ride height');
    const paths = (svg: string) => [...svg.matchAll(/ d="([^"]+)"/g)].map(([, path]) => path);
    expect(paths(on)).not.toEqual(paths(off));
  });

  test.each([
    [
      ['--view', 'side', '--out', 'x.pdf'],
      2,
      /^--out: a drawing ends in \.dxf, \.svg, \.png, found "x\.pdf"\nusage: draw /,
    ],
    [['--view', 'side', '--out', 'x'], 2, /^--out: a drawing ends in /],
    [['--view', 'below', '--out', 'x.svg'], 2, /^--view is side or top or .*, found "below"\n/],
    [['--out', 'x.svg'], 2, /^--view needs one of side, top, /],
    [['--view', 'side'], 2, /^--out needs the file to write\n/],
    [['--view', 'turn', '--out', 'x.dxf'], 2, /^curves are drawn as svg or png, not as dxf\n/],
    [['--view', 'side', '--out', 'x.svg', '--heave', '1:2:1'], 2, /^--heave takes one value\n/],
    [['--view', 'side', '--out', 'x.svg', '--braking=-0.5'], 2, /^--braking is a share of the load/],
    [['--view', 'side', '--out', '/nowhere/x.svg'], 1, /^\/nowhere\/x\.svg: its folder does not exist\n$/],
    [
      ['--view', 'side', '--out', 'x.svg', '--heave', '1500'],
      1,
      /layout\.json: the links leave the axle free [^\n]*\n$/,
    ],
  ])('refuses %j in one line', async (args, code, told) => {
    const layout = layoutIn(testFolder());
    const answer = await toeboard('draw', layout, ...args);
    expect(answer.code).toBe(code);
    expect(answer.out).toBe('');
    expect(answer.err).toMatch(told);
  });

  test('leaves no half file in a folder that may not be written, and a former drawing as it was', async () => {
    const folder = testFolder();
    const layout = layoutIn(folder);
    const closed = join(folder, 'closed');
    mkdirSync(closed);
    writeFileSync(join(closed, 'side.svg'), 'former');
    chmodSync(closed, 0o555);
    chmodSync(folder, 0o755);
    const asNobody = process.getuid?.() === 0 ? 65_534 : undefined;
    const answer = await startedToeboard(
      ['draw', layout, '--view', 'side', '--out', join(closed, 'side.svg')],
      { uid: asNobody },
    );
    chmodSync(closed, 0o755);
    expect(answer.err).toBe(`${join(closed, 'side.svg')}: this program may not write there\n`);
    expect(answer.code).toBe(1);
    expect(readdirSync(closed)).toEqual(['side.svg']);
    expect(readFileSync(join(closed, 'side.svg'), 'utf8')).toBe('former');
  });

  // A limit on the size of files breaks a write off in its middle, as a full disk does.
  test('a write broken off is told, and no half file is left', async () => {
    const folder = testFolder();
    const layout = layoutIn(folder);
    const out = join(folder, 'side.png');
    const line = `trap '' XFSZ; ulimit -f 16; exec "$0" "$@"`;
    const args = [join(root, 'src-main/command-line.ts'), 'draw', layout, '--view', 'side', '--out', out];
    const answer = await new Promise<{ code: unknown; err: string }>((done) => {
      execFile('sh', ['-c', line, process.execPath, ...args], { cwd: root }, (error, _out, err) =>
        done({ code: error?.code ?? 0, err }),
      );
    });
    expect(answer).toEqual({ code: 1, err: `${out}: the disk does not take a file this large\n` });
    expect(readdirSync(folder)).toEqual(['layout.json']);
  });
});

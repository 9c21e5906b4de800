import { execFile, execFileSync, spawn } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { writeReason } from '../../src-main/files/index.ts';
import { type Answer, toeboard } from '../support/command-line.ts';
import { testFolder } from '../support/host-folder.ts';
import { DEMONSTRATIONS } from '../support/printed.ts';
import { type ReadPage, readPdf } from '../support/read-pdf.ts';

const root = resolve(import.meta.dirname, '../..');

const COMMAND = [join(root, 'src-main/command-line.ts'), 'sheet'];

const sheet = (...args: string[]) => toeboard('sheet', ...args);

const GOOD = 'projects/hairpins-side-steer.json';

describe('sheet', () => {
  test.each(DEMONSTRATIONS)('prints %s', async (name) => {
    const folder = testFolder();
    const out = join(folder, 'sheet.pdf');
    const answer = await sheet(`projects/${name}`, '--out', out);
    expect({ code: answer.code, err: answer.err }).toEqual({ code: 0, err: '' });
    const { layout, bytes, kind, paper } = JSON.parse(answer.out);
    expect({ kind, paper }).toEqual({ kind: 'sheet', paper: 'letter' });
    const file = readFileSync(out);
    expect(file.length).toBe(bytes);
    expect(readdirSync(folder)).toEqual(['sheet.pdf']);
    await readPdf(new Uint8Array(file), (pages) => {
      expect(pages.length).toBeGreaterThan(7);
      expect(pages[0]?.text).toContain(layout);
      expect([pages[0]?.width, pages[0]?.height].map((size) => Math.round((size as number) * 10))).toEqual([
        2794, 2159,
      ]);
    });
  });

  test('takes kind, paper, unit, names and date; who measures in mm gets A4', async () => {
    const folder = testFolder();
    const out = join(folder, 'one.pdf');
    const answer = await sheet(
      GOOD,
      '--out',
      out,
      '--kind',
      'customer',
      '--unit=mm',
      '--customer',
      'Tamsin Ellerdine',
      '--car',
      'Long tourer',
      '--date',
      '2026-02-03',
    );
    expect(answer).toMatchObject({ code: 0, err: '' });
    await readPdf(new Uint8Array(readFileSync(out)), (pages) => {
      expect(pages).toHaveLength(1);
      const { text, width, height } = pages[0] as ReadPage;
      for (const words of ['Tamsin Ellerdine', 'Long tourer', '2026-02-03']) expect(text).toContain(words);
      expect([Math.round(width), Math.round(height)]).toEqual([210, 297]);
    });
  });

  test.each([
    [['--out'], '--out needs a value'],
    [[], '--out needs the PDF to write'],
    [['--out', 'x.pdf', '--paper', 'a3'], '--paper is letter or a4, found "a3"'],
    [
      ['--out', 'x.pdf', '--kind', 'poster'],
      '--kind is sheet or templates or customer or measuring or moving, found "poster"',
    ],
    [['--out', 'x.pdf', '--unit', 'ft'], '--unit is in or mm, found "ft"'],
    [['--out', 'x.pdf', '--date', '2026-02-30'], '--date is a day as YYYY-MM-DD, found "2026-02-30"'],
  ])('refuses %j as wrong usage', async (args, reason) => {
    const answer = await sheet(GOOD, ...args);
    expect({ code: answer.code, out: answer.out }).toEqual({ code: 2, out: '' });
    expect(answer.err.split('\n')[0]).toBe(reason);
  });

  test('a wrong layout is told in one line, and nothing is written', async () => {
    const folder = testFolder();
    const bad = join(folder, 'bad.json');
    writeFileSync(bad, '{"format":"toeboard-layout","version":1}');
    const answer = await sheet(bad, '--out', join(folder, 'x.pdf'));
    expect(answer.code).toBe(1);
    expect(answer.err.trimEnd().split('\n')).toHaveLength(1);
    expect(readdirSync(folder)).toEqual(['bad.json']);
  });

  test('a place that cannot be written to is told in one line, and leaves no half file', async () => {
    const folder = testFolder();
    mkdirSync(join(folder, 'taken.pdf'));
    const cases: [string, string][] = [
      [join(folder, 'nowhere', 'x.pdf'), 'its folder does not exist'],
      [join(folder, 'taken.pdf'), 'a folder of that name is in the way'],
    ];
    for (const [out, reason] of cases) {
      const answer = await sheet(GOOD, '--out', out);
      expect(answer).toEqual({ code: 1, out: '', err: `${out}: ${reason}\n` });
    }
    expect(readdirSync(folder)).toEqual(['taken.pdf']);
    expect(readdirSync(join(folder, 'taken.pdf'))).toEqual([]);
  });

  test('a file that was there stays as it was when the new one cannot be written', async () => {
    const folder = testFolder();
    const out = join(folder, 'sheet.pdf');
    writeFileSync(out, 'the former');
    // The superuser may write anywhere; a file larger than the shell allows stops them too, as a full disk would.
    const script = `ulimit -f 8; exec "$0" "$@"`;
    const answer = await new Promise<Answer>((done) => {
      execFile(
        'bash',
        ['-c', script, process.execPath, ...COMMAND, GOOD, '--out', out],
        { cwd: root },
        (error, stdout, err) => done({ code: error ? Number(error.code) : 0, out: stdout, err }),
      );
    });
    expect(answer).toEqual({ code: 1, out: '', err: `${out}: the disk does not take a file this large\n` });
    expect(readFileSync(out, 'utf8')).toBe('the former');
    expect(readdirSync(folder)).toEqual(['sheet.pdf']);
  });

  test('a full disk, a closed folder and a device have their words', () => {
    const reason = (code: string) => writeReason(Object.assign(new Error(code), { code }));
    expect(reason('ENOSPC')).toBe('the disk is full: free some space and try again');
    expect(reason('EACCES')).toBe('this program may not write there');
    expect(reason('EROFS')).toBe('the disk is read-only');
    expect(reason('ENXIO')).toBe('what stands there is a device or a pipe, not a file');
    expect(reason('EOTHER')).toBeUndefined();
  });

  test('a pipe is not replaced by a file', async () => {
    const folder = testFolder();
    const pipe = join(folder, 'pipe.pdf');
    execFileSync('mkfifo', [pipe]);
    const answer = await sheet(GOOD, '--out', pipe);
    expect(answer.err).toBe(`${pipe}: what stands there is a device or a pipe, not a file\n`);
    expect(statSync(pipe).isFIFO()).toBe(true);
    expect(readdirSync(folder)).toEqual(['pipe.pdf']);
  });

  test('called off from the keyboard, it writes nothing and says so', async () => {
    const folder = testFolder();
    const out = join(folder, 'sheet.pdf');
    const child = spawn(process.execPath, [...COMMAND, GOOD, '--out', out], { cwd: root });
    let err = '';
    child.stderr.on('data', (data: Buffer) => {
      err += data.toString();
    });
    // Again and again until it is heard: before the work begins nobody listens, and the program just ends.
    const code = await new Promise<number | null>((done) => {
      const timer = setInterval(() => child.kill('SIGINT'), 150);
      child.on('exit', (status) => {
        clearInterval(timer);
        done(status);
      });
    });
    expect(code === null || code === 1).toBe(true);
    if (code === 1) expect(err).toBe('cancelled: nothing was written\n');
    expect(readdirSync(folder)).toEqual([]);
    expect(existsSync(out)).toBe(false);
  });
});

test('a closed folder refuses whoever is not the superuser', async () => {
  if (process.getuid?.() === 0) {
    // As the superuser nothing is closed: what is refused then is covered by the cases above.
    expect(writeReason(Object.assign(new Error(), { code: 'EACCES' }))).toBeDefined();
    return;
  }
  const folder = testFolder();
  chmodSync(folder, 0o500);
  const answer = await sheet(GOOD, '--out', join(folder, 'x.pdf'));
  chmodSync(folder, 0o700);
  expect(answer.err).toContain('this program may not write there');
});

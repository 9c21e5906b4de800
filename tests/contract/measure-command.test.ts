import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readLayout } from '../../shared-math/layout/index.ts';
import { toeboard } from '../support/command-line.ts';
import { documentOf, rawLayout } from '../support/layouts.ts';
import { SECTOR_AXIS } from '../support/survey-peer.ts';
import { measured, pointsOf, sideSteerRows } from '../support/surveys.ts';

const folder = mkdtempSync(join(tmpdir(), 'toeboard-measure-'));

const measure = (...args: string[]) => toeboard('measure', ...args);

function file(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

const survey = (rows: unknown[]) => ({ format: 'toeboard-survey', version: 1, rows });
const layout = file('layout.json', rawLayout());
const drawn = pointsOf(documentOf(rawLayout()));
const rows = measured(sideSteerRows(), drawn, drawn);

describe('measure', () => {
  test('answers with the adjusted document, every point, every row and the bump steer with its doubt', async () => {
    const { code, out, err } = await measure(layout, file('survey.json', survey(rows)), '--json');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const answer = JSON.parse(out);
    expect(Object.keys(answer)).toEqual('format version layout points rows redundancy bumpSteer'.split(' '));
    expect(answer).toMatchObject({ format: 'toeboard-adjustment', version: 1 });
    const read = readLayout(answer.layout);
    expect(read.ok).toBe(true);
    const points = Object.keys(drawn).filter((id) => id !== SECTOR_AXIS);
    expect(Object.keys(answer.points).sort()).toEqual(points.sort());
    for (const [id, { at, doubt, free }] of Object.entries<{ at: number[]; doubt: number[]; free: string[] }>(
      answer.points,
    )) {
      for (const axis of [0, 1, 2] as const) expect(at[axis]).toBeCloseTo(drawn[id]![axis], 3);
      expect(doubt).toHaveLength(3);
      expect(free).toEqual([]);
      expect(answer.layout.origins[id] ?? answer.layout.origins[id.replace('.right.', '.left.')]).toBe(
        'tape',
      );
    }
    expect(answer.rows.map(({ id }: { id: string }) => id)).toEqual(rows.map(({ id }) => id));
    expect(Object.keys(answer.rows[0])).toEqual(
      'id observed computed residual redundancy w fits alike'.split(' '),
    );
    expect(answer.redundancy).toBeGreaterThan(10);
    expect(answer.bumpSteer.doubt).toBeGreaterThan(0);
    expect(answer.bumpSteer.shares[0].share).toBeGreaterThanOrEqual(answer.bumpSteer.shares[1].share);
    expect(answer.bumpSteer.unknown[0]).toMatchObject({ axis: expect.stringMatching(/^[xyz]$/) });
  });

  test('says out of reach by name where a reading was taken at a pose that the drawing cannot reach', async () => {
    const far = { id: 's', kind: 'steer-change', side: 'left', heave: 1500, value: 1 };
    const { code, out } = await measure(layout, file('far.json', survey([far])));
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ format: 'toeboard-adjustment', status: 'out-of-reach' });
  });

  test.each<[string, unknown, RegExp]>([
    [
      'an unknown point',
      survey([{ ...rows[0], of: 'axle.left.nose' }]),
      /bad\.json: rows\[0\] "r1": unknown point "axle\.left\.nose"/,
    ],
    ['an unknown kind', survey([{ ...rows[0], kind: 'sideways' }]), /bad\.json: rows\[0\] "r1"/],
    ['another document', rawLayout(), /bad\.json: format: expected "toeboard-survey"/],
    ['no JSON', 'a tape', /bad\.json: not a survey: not JSON: /],
    [
      'brackets without end',
      '['.repeat(900_000),
      /bad\.json: not a survey: brackets stand in one another more than 64 deep$/m,
    ],
  ])('%s is one line and exit 1', async (_, content, line) => {
    const { code, out, err } = await measure(layout, file('bad.json', content));
    expect(code).toBe(1);
    expect(out).toBe('');
    expect(err).toMatch(line);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  test('a missing survey and one file too many are wrong usage, exit 2', async () => {
    for (const args of [[], [layout], [layout, layout, layout], [layout, layout, '--csv']]) {
      const { code, err } = await measure(...args);
      expect(code).toBe(2);
      expect(err).toMatch(/usage: measure LAYOUT\.json SURVEY\.json/);
    }
  });
});

import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
import { toeboard } from '../../support/command-line.ts';
import { stopsOf } from '../../support/judged-anew.ts';
import { reachesInto } from '../../support/reaches-into.ts';

// The command as a person runs it, on layouts of which much is held, so that the search is short.

const folder = mkdtempSync(join(tmpdir(), 'toeboard-propose-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Reported {
  readonly layout: string;
  readonly seed: number;
  readonly held: readonly string[];
  readonly rooms: Readonly<Record<string, readonly (number | string)[]>>;
  readonly evaluations: number;
  readonly drawn: { readonly bumpSteer: number } | null;
  readonly proposals: readonly {
    readonly name: string;
    readonly file: string;
    readonly figures: { readonly bumpSteer: number };
    readonly layout: LayoutDocument;
  }[];
  readonly why: { readonly sentence: string } | null;
  readonly reason: readonly {
    readonly sentences: readonly string[];
    readonly nearest: LayoutDocument | null;
  }[];
}

describe('propose', () => {
  test('writes each proposal as a layout without a stop, the same for the same seed', async () => {
    const out = join(folder, 'found');
    const args = ['propose', 'projects/hairpins-side-steer.json', '--seed', '4', '--json', '--out', out];
    const { code, out: text, err } = await toeboard(...args);
    expect([code, err]).toEqual([0, '']);
    const said = JSON.parse(text) as Reported;
    expect(said).toMatchObject({ layout: 'Side steer, box at the cowl', seed: 4, reason: [], why: null });
    // What was taped on the car is held unless somebody lets it go.
    expect(said.held).toEqual(['box', 'box-kind', 'pitman-arm', 'steering-arm', 'tie-rod']);
    expect(said.proposals.length).toBeGreaterThan(0);
    expect(readdirSync(out)).toHaveLength(said.proposals.length);
    for (const { layout, file, name } of said.proposals) {
      const written = JSON.parse(readFileSync(file, 'utf8')) as LayoutDocument;
      expect(written).toEqual(layout);
      expect({ name, stops: await stopsOf(written), in: reachesInto(written) }).toEqual({
        name,
        stops: [],
        in: [],
      });
    }
    const again = JSON.parse((await toeboard(...args)).out) as Reported;
    expect(again).toEqual(said);
  });

  test('tries what is open to it alone, and says so', async () => {
    const said = await toeboard(
      'propose',
      'projects/hairpins-side-steer.json',
      '--hold',
      'box-kind,tie-rod,lateral',
      '--room',
      'way=side,mount=outside,top,axle-side=behind,arm-way=down,box-turn=1:4',
      '--json',
    );
    expect([said.code, said.err]).toEqual([0, '']);
    const { rooms, proposals } = JSON.parse(said.out) as Reported;
    expect(rooms).toEqual({
      way: ['side'],
      mount: ['outside', 'top'],
      'axle-side': ['behind'],
      'arm-way': ['down'],
      'box-turn': [1, 4],
    });
    expect(proposals.length).toBeGreaterThan(0);
    for (const { layout, name } of proposals) {
      expect(name).toMatch(/^Side steer (outside|on top of) the left rail, arm down, behind the axle,/);
      const { sectorCentre, sectorAxis, pitmanBall } = layout.steering.box;
      expect(sectorCentre[0]).toBeLessThan(layout.axle.left.wheelCentre[0]);
      expect(pitmanBall[2]).toBeLessThan(sectorCentre[2]);
      const turn = (Math.atan(-sectorAxis[0] / sectorAxis[1]) * 180) / Math.PI;
      expect(turn).toBeGreaterThan(1 - 1e-3);
      expect(turn).toBeLessThan(4 + 1e-3);
      expect(await stopsOf(layout)).toEqual([]);
    }
  });

  test('where what is held and given leaves nothing to try, it says that, and what to let go', async () => {
    const { code, out, err } = await toeboard(
      'propose',
      'projects/hairpins-side-steer.json',
      '--hold',
      'tie-rod,lateral',
      '--room',
      'way=cross,mount=top',
    );
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('As far as given: cross steer; the steering box on top of the rail.');
    expect(out).toMatch(/\nNothing fits as the car stands\. .* would fit with the other way of steering/);
    expect(out).toMatch(
      /\nWhat is kept as drawn, and the room that is given, leave no arrangement to try\.\n$/,
    );
  });

  test('where nothing fits, exit 0, an empty list, the reason, and the nearest with what it breaks', async () => {
    const held = 'way,box,box-kind,pitman-arm,steering-arm,tie-rod,lateral,shaft,stops';
    const { code, out, err } = await toeboard(
      'propose',
      'projects/hairpins-box-too-low.json',
      '--hold',
      held,
      '--json',
    );
    expect([code, err]).toEqual([0, '']);
    const said = JSON.parse(out) as Reported;
    expect(said.proposals).toEqual([]);
    expect(said.why?.sentence).toMatch(/\.$/);
    const [first] = said.reason;
    // Drawn with its box too low on purpose: that is what it says.
    expect(first?.sentences.join(' ')).toContain('Bump steer 3.82°');
    const stops = first?.nearest ? await stopsOf(first.nearest) : [];
    expect(stops.join(' ')).toContain('Bump steer 3.82°');
  });
});

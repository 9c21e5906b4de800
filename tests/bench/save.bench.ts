import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { transaction } from '../../src-main/store/database.ts';
import { historyIn } from '../../src-main/store/history.ts';
import { openStore } from '../../src-main/store/index.ts';
import { photoUseIn } from '../../src-main/store/photo-use.ts';
import { statesIn } from '../../src-main/store/states.ts';
import { variantsIn } from '../../src-main/store/variants.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { writtenLayout } from '../support/store-written.ts';

const SAVES = 300;

function median(times: number[]): number {
  return times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] as number;
}

test('a save that is looked after, beside the same save without a look at the files', () => {
  const folder = mkdtempSync(join(tmpdir(), 'toeboard-bench-'));
  const store = openStore({ folder });
  onTestFinished(() => {
    store.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const car = store.cars.add(store.customers.add('Odd Fellow', ''), 'Roadster', '');
  const bench = {
    db: store.db,
    now: Date.now,
    write: <Value>(work: () => Value) => transaction(store.db, work),
  };
  const plain = variantsIn(bench, historyIn(bench, statesIn(store.db), photoUseIn(store.db)));
  const ways = { looked: store.variants, plain };
  const times: Record<keyof typeof ways, number[]> = { looked: [], plain: [] };
  const ids = { looked: '', plain: '' };
  for (const way of ['looked', 'plain'] as const)
    ids[way] = store.variants.add(car, sampleLayout(way), 'Begun');
  // Turn by turn, so that a noisy machine troubles both alike.
  for (let revision = 1; revision <= SAVES; revision += 1)
    for (const way of revision % 2 === 0 ? (['looked', 'plain'] as const) : (['plain', 'looked'] as const)) {
      const edit = { step: `edit ${revision}`, label: 'Drag', force: false };
      const document = writtenLayout(revision + 1);
      const begun = performance.now();
      ways[way].save({ id: ids[way], document, revision, ...edit });
      times[way].push(performance.now() - begun);
    }
  const [looked, without] = [median(times.looked), median(times.plain)];
  process.stdout.write(
    `a save, median: ${looked.toFixed(2)} ms; without the look at the files: ${without.toFixed(2)} ms; ${(looked / without).toFixed(2)} times as long\n`,
  );
  expect(looked / without).toBeLessThan(1.5);
});

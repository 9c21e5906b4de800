import { describe, expect, test } from 'vitest';
import { openStore } from '../../src-main/store/index.ts';
import { testFolder } from '../support/host-folder.ts';
import { ADDRESS, startProgram } from '../support/host-process.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { exchangeToken, httpCaller, value } from '../support/host-transports.ts';
import { withVariant } from '../support/store-sample.ts';
import { writtenLayout } from '../support/store-written.ts';

describe('a program that is killed', () => {
  test('in the middle of saving leaves a whole database with every acknowledged save', async () => {
    const folder = testFolder();
    const first = openStore({ folder });
    const id = withVariant(first);
    first.close();

    let before = 1;
    for (let round = 0; round < 8; round += 1) {
      const writer = startProgram('tests/support/store-writer.ts', [folder, id]);
      // After more saves each time; the signal finds the writer wherever it is then.
      await writer.says(new RegExp(`(?:\\d+\\n){${1 + 7 * round}}`));
      writer.child.kill('SIGKILL');
      expect(await writer.ended).toBe('SIGKILL');
      const acknowledged = Number(writer.said().match(/(\d+)\n[^\n]*$/)?.[1]);
      expect(acknowledged).toBeGreaterThan(before);

      const store = openStore({ folder });
      expect(store.notices).toEqual([]);
      expect(store.db.pragma('integrity_check', { simple: true })).toBe('ok');
      expect(store.db.pragma('foreign_key_check')).toEqual([]);
      const { revision, document } = store.variants.open(id);
      // The save that was on its way may have been written without its acknowledgement having got out.
      expect(revision - acknowledged).toBeGreaterThanOrEqual(0);
      expect(revision - acknowledged).toBeLessThanOrEqual(1);
      expect(document).toEqual(writtenLayout(revision));
      const newest = store.variants.states(id)[0];
      expect(store.history.read(newest?.id ?? 0)).toEqual(document);
      store.close();
      before = revision;
    }
  });

  test('right after it acknowledged a save over its host finds it again', async () => {
    const folder = testFolder();
    const first = openStore({ folder });
    const id = withVariant(first);
    first.close();
    const document = sampleLayout('Arm down', 222);

    const host = startProgram('src-main/loopback-main.ts', [], { env: { TOEBOARD_DATA: folder } });
    const [address] = await host.says(ADDRESS);
    const call = httpCaller(address, (await exchangeToken(address)).token);
    await value(call, 'variant.save', { id, document, revision: 1, step: 's', label: 'Drag' });
    host.child.kill('SIGKILL');
    await host.ended;

    const store = openStore({ folder });
    expect(store.variants.open(id)).toMatchObject({ document, revision: 2 });
    store.close();
  });
});

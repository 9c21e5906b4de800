import { writeSync } from 'node:fs';
import { openStore, StoreError } from '../../src-main/store/index.ts';
import { writtenLayout } from './store-written.ts';

// A program that saves as fast as it can and tells each save that has been acknowledged, until it is killed or has
// made as many as it was told: FOLDER VARIANT [COUNT]. Where another program was first, it opens anew and goes on.

const [folder = '', id = '', count = 'Infinity'] = process.argv.slice(2);
const store = openStore({ folder });
let { revision } = store.variants.open(id);
for (let saves = 0; saves < Number(count); ) {
  const step = `${process.pid} ${Math.floor(saves / 3)}`;
  try {
    const save = { id, document: writtenLayout(revision + 1), revision, step, label: 'Drag', force: false };
    ({ revision } = store.variants.save(save));
    saves += 1;
    writeSync(1, `${revision}\n`);
  } catch (error) {
    if (!(error instanceof StoreError) || error.code !== 'changed-elsewhere') throw error;
    ({ revision } = store.variants.open(id));
  }
}
store.close();

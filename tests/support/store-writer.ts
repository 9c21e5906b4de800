import { writeSync } from 'node:fs';
import { openStore, StoreError } from '../../src-main/store/index.ts';
import { writtenLayout } from './store-written.ts';

// A program that saves as fast as it can and tells each save that has been acknowledged, until it is killed or has
// made as many as it was asked for: FOLDER VARIANT [COUNT [stay]]. Where another program was first, it opens anew and goes on.
// With "stay" it keeps the store open after that, saves once more when it gets SIGUSR2, and says how that went.

const [folder = '', id = '', count = 'Infinity', stay] = process.argv.slice(2);
const store = openStore({ folder });
let { revision } = store.variants.open(id);

function sayOneMore(): void {
  const edit = { step: 'one more', label: 'Drag', force: false };
  try {
    store.variants.save({ id, document: writtenLayout(revision + 1), revision, ...edit });
    writeSync(1, 'saved once more\n');
  } catch (error) {
    writeSync(1, `${(error as Error).message}\n`);
  }
}

if (stay) process.on('SIGUSR2', sayOneMore);
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
if (stay) {
  setInterval(() => {}, 1000);
} else store.close();

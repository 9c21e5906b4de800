import { writeSync } from 'node:fs';
import { openStore } from '../../src-main/store/index.ts';

// A program that packs the states that an older program left plain, and says each write, until it is killed or done: FOLDER.

const [folder = ''] = process.argv.slice(2);
const store = openStore({ folder });
writeSync(1, 'begins\n');
while (store.packSome()) writeSync(1, 'packed some\n');
store.close();

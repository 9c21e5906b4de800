import { openStore } from '../../src-main/store/index.ts';

// A program that opens the store of a folder, adds a customer and ends: FOLDER NAME.

const [folder = '', name = ''] = process.argv.slice(2);
const store = openStore({ folder });
store.customers.add(name, '');
console.log(store.notices.length === 0 ? 'opened' : store.notices.join(' '));
store.close();

import BetterSqlite3 from 'better-sqlite3';
import { openStore } from '../../src-main/store/index.ts';

// A program that opens the store of a folder, reads the list of the shop, says how long both took in ms, and ends at once:
// FOLDER. With "all" it first checks every page, as a start does that trusts nothing.

const [folder = '', all] = process.argv.slice(2);
const begun = performance.now();
if (all) {
  const db = new BetterSqlite3(`${folder}/toeboard.sqlite`, { readonly: true });
  db.pragma('quick_check(1)');
  db.close();
}
const store = openStore({ folder });
store.shop.read();
console.log((performance.now() - begun).toFixed(2));
process.exit(0);

import { trustRates, trustRows } from './spline-trust.ts';

// npm run spline-trust -- [PHOTOS] [SEED]: the rates of the short test over many more photos, in half a second each.

const [photos = 1200, seed = 50_000] = process.argv.slice(2).map(Number);
const rows = [];
for (const row of trustRows(seed, photos)) {
  rows.push(row);
  if (rows.length % 60 === 0) process.stderr.write(`${rows.length} of ${photos}\n`);
}
const { wrong, ...rates } = trustRates(rows);
for (const row of wrong) console.log(JSON.stringify(row));
console.log(JSON.stringify(rates));

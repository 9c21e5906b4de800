import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { notice } from './notice.ts';

const root = resolve(import.meta.dirname, '../..');
writeFileSync(join(root, 'NOTICE'), notice(root));

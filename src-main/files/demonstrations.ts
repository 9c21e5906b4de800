import { createHash } from 'node:crypto';
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { type LayoutDocument, parseLayout, refusalLine, refusalOf } from '../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { parseJson } from '../../shared-math/outside/index.ts';
import type { ShelfPart } from '../../shared-math/shelf/index.ts';
import { readShelfCsv } from './shelf-csv.ts';

const name = z.string().trim().min(1).max(200);
const notes = z.string().max(20_000).default('');

const shopSchema = z.strictObject({
  format: z.literal('toeboard-shop'),
  version: z.literal(1),
  name,
  customers: z.array(
    z.strictObject({
      name,
      notes,
      cars: z.array(
        z.strictObject({
          name,
          notes,
          layouts: z.array(
            z.strictObject({
              /** Of the same folder; a path out of it is refused. */
              file: z
                .string()
                .regex(/^[\w-][\w.-]*\.json$/, 'expected the name of a .json file beside shop.json'),
              about: z.string().max(500),
            }),
          ),
        }),
      ),
    }),
  ),
});

export interface DemonstrationLayout {
  readonly file: string;
  readonly about: string;
  readonly document: LayoutDocument;
}

/** The invented shop that ships with the program, every layout read and checked. */
export interface DemonstrationShop {
  readonly name: string;
  readonly customers: readonly {
    readonly name: string;
    readonly notes: string;
    readonly cars: readonly {
      readonly name: string;
      readonly notes: string;
      readonly layouts: readonly DemonstrationLayout[];
    }[];
  }[];
}

function textOf(folder: string, file: string): string | undefined {
  try {
    return readFileSync(join(folder, file), 'utf8');
  } catch {
    return undefined;
  }
}

/** Each layout goes through the same reading as anyone's file. */
function layoutOf(folder: string, file: string): LayoutDocument {
  const text = textOf(folder, file);
  if (text === undefined) throw new Refused(`${file}: cannot be read`);
  const layout = parseLayout(text);
  if (!layout.ok) throw new Refused(`${file}: ${refusalLine(layout.failure)}`);
  return layout.value;
}

class Refused extends Error {}

/** The photos of the demonstrations that layouts name, each file by its hash. Missing ones are left out. */
export function demonstrationPhotos(folder: string, hashes: readonly string[]): Uint8Array[] {
  if (hashes.length === 0) return [];
  return globSync('photos/*.{png,jpg,webp}', { cwd: folder })
    .map((path) => readFileSync(join(folder, path)))
    .filter((content) => hashes.includes(createHash('sha256').update(content).digest('hex')));
}

/** The invented shop's shelf, beside its cars. The failure is one line with the file's name. */
export function readDemonstrationShelf(folder: string): Outcome<ShelfPart[], string> {
  const text = textOf(folder, 'shelf.csv');
  if (text === undefined)
    return failed('the demonstration shelf is not there: projects/shelf.csv cannot be read');
  const parts = readShelfCsv(text);
  return parts.ok ? parts : failed(`shelf.csv: ${parts.failure}`);
}

/** Reads the demonstrations of a folder: shop.json and the layouts it names. The failure is one line with the file's name. */
export function readDemonstrations(folder: string): Outcome<DemonstrationShop, string> {
  const text = textOf(folder, 'shop.json');
  if (text === undefined)
    return failed('the demonstrations are not there: projects/shop.json cannot be read');
  try {
    const input = parseJson(text);
    if (!input.ok) return failed(`shop.json: ${input.failure}`);
    const shop = shopSchema.safeParse(input.value);
    if (!shop.success) return failed(`shop.json: ${refusalLine(refusalOf(shop.error, input.value))}`);
    return succeeded({
      name: shop.data.name,
      customers: shop.data.customers.map((customer) => ({
        ...customer,
        cars: customer.cars.map((car) => ({
          ...car,
          layouts: car.layouts.map((entry) => ({ ...entry, document: layoutOf(folder, entry.file) })),
        })),
      })),
    });
  } catch (error) {
    if (error instanceof Refused) return failed(error.message);
    throw error;
  }
}

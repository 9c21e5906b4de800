import type { Bench } from './database.ts';
import { parsedJson } from './readable.ts';

/** What a person has set. The store keeps names and values; what they mean is the API's business. */
export function settingsIn({ db, write }: Bench) {
  const all = db.prepare<[], { name: string; value: string }>('SELECT name, value FROM setting');
  const put = db.prepare<[string, string]>(
    'INSERT INTO setting (name, value) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
  );
  return {
    read: (): Record<string, unknown> =>
      Object.fromEntries(
        all.all().flatMap(({ name, value }) => {
          const stored = parsedJson(value);
          return stored === undefined ? [] : [[name, stored] as const];
        }),
      ),

    /** Sets those given; a value of undefined is left as it is. */
    write: (values: Readonly<Record<string, unknown>>): void =>
      write(() => {
        for (const [name, value] of Object.entries(values))
          if (value !== undefined) put.run(name, JSON.stringify(value));
      }),
  };
}

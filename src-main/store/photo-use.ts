import type { Database } from './database.ts';

const HASH = /"hash"\s*:\s*"([0-9a-f]{64})"/g;

/** Photos, or drawings under views, that stored documents name, of each variant, as of its newest state. */
const ofDocumentsBy = (key: 'photos' | 'underlays') => `
  INSERT INTO photo_use (variant_id, hash, first_state, last_state)
    SELECT variant.id, photo.value ->> '$.hash', latest.state, latest.state
    FROM (SELECT id, (SELECT coalesce(max(id), 0) FROM history WHERE variant_id = variant.id) AS state FROM variant) AS latest
    JOIN variant ON variant.id = latest.id
    JOIN json_each(CASE WHEN json_valid(variant.document) THEN variant.document ELSE '{}' END, '$.${key}') AS photo
    WHERE photo.type = 'object' AND typeof(photo.value ->> '$.hash') = 'text'
  ON CONFLICT DO UPDATE SET last_state = max(last_state, excluded.last_state)`;

/** Of a variant whose states that named it are gone, while a later one is there that does not. */
const OUT_OF_USE = `
  DELETE FROM photo_use
    WHERE EXISTS (SELECT 1 FROM history WHERE history.variant_id = photo_use.variant_id AND history.id > last_state)
      AND NOT EXISTS (SELECT 1 FROM history WHERE history.variant_id = photo_use.variant_id
                        AND history.id BETWEEN first_state AND last_state)`;

/**
 * Which photos each variant names, or has named in a state that is kept: the first and the last state that do. Kept as
 * states are written, so that no text is ever searched for them. What lies between the two counts as naming it too: a
 * photo may be kept longer than it must be, never shorter.
 */
export function photoUseIn(db: Database) {
  const add = db.prepare<[{ variant: string; hash: string; state: number }]>(`
    INSERT INTO photo_use (variant_id, hash, first_state, last_state) VALUES (@variant, @hash, @state, @state)
      ON CONFLICT DO UPDATE SET first_state = min(first_state, @state), last_state = max(last_state, @state)`);
  const ofDocuments = (['photos', 'underlays'] as const).map((key) => db.prepare(ofDocumentsBy(key)));
  const outOfUse = db.prepare(OUT_OF_USE);

  return {
    /** Those that the text of a state names. */
    note(variant: string, text: string, state: number): void {
      for (const [, hash] of text.matchAll(HASH)) if (hash !== undefined) add.run({ variant, hash, state });
    },

    /** Those that the documents of all variants name. */
    noteDocuments: (): void => {
      for (const each of ofDocuments) each.run();
    },

    forget: (): void => void outOfUse.run(),
  };
}

export type PhotoUse = ReturnType<typeof photoUseIn>;

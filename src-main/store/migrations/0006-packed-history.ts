import type { Migration } from './migration.ts';

/**
 * Room for states that are kept as what differs from a base, the photos that each layout names, and indices by which
 * the lists and the bin are read without the documents. It reads no earlier state: those are packed afterwards, a few at
 * a time, and until then `packed` is NULL; after it, `document` is empty.
 */
export const packedHistory: Migration = {
  number: 6,
  name: 'packed-history',
  statements: `
    CREATE TABLE base (
      id INTEGER PRIMARY KEY,
      variant_id TEXT NOT NULL REFERENCES variant (id) ON DELETE CASCADE,
      packed BLOB NOT NULL,
      sum INTEGER NOT NULL
    ) STRICT;
    CREATE INDEX base_of_variant ON base (variant_id, id);

    ALTER TABLE history ADD COLUMN base INTEGER;
    ALTER TABLE history ADD COLUMN packed BLOB;
    ALTER TABLE history ADD COLUMN sum INTEGER;
    CREATE INDEX history_plain ON history (variant_id, id) WHERE packed IS NULL;

    CREATE TABLE photo_use (
      variant_id TEXT NOT NULL REFERENCES variant (id) ON DELETE CASCADE,
      hash TEXT NOT NULL,
      first_state INTEGER NOT NULL,
      last_state INTEGER NOT NULL,
      PRIMARY KEY (variant_id, hash)
    ) STRICT, WITHOUT ROWID;
    CREATE INDEX photo_use_of_hash ON photo_use (hash);
    INSERT OR IGNORE INTO photo_use (variant_id, hash, first_state, last_state)
      SELECT variant.id, photo.value ->> '$.hash', latest.state, latest.state
      FROM (SELECT id, (SELECT coalesce(max(id), 0) FROM history WHERE variant_id = variant.id) AS state FROM variant) AS latest
      JOIN variant ON variant.id = latest.id
      JOIN json_each(CASE WHEN json_valid(variant.document) THEN variant.document ELSE '{}' END, '$.photos') AS photo
      WHERE photo.type = 'object' AND typeof(photo.value ->> '$.hash') = 'text';

    CREATE INDEX variant_shown ON variant (car_id, made, id, name, saved_at) WHERE binned_at IS NULL;
    CREATE INDEX variant_saved ON variant (saved_at);
    CREATE INDEX photo_added ON photo (added_at, hash);
    CREATE INDEX customer_binned ON customer (binned_at) WHERE binned_at IS NOT NULL;
    CREATE INDEX car_binned ON car (binned_at) WHERE binned_at IS NOT NULL;
    CREATE INDEX variant_binned ON variant (binned_at) WHERE binned_at IS NOT NULL;
    CREATE INDEX part_binned ON part (binned_at) WHERE binned_at IS NOT NULL;
  `,
};

/** A group of a DXF: its code and its value, as text. */
export type DxfTag = readonly [code: number, value: string];

/** Reads a DXF line by line into its groups, without a parser: a code on one line, its value on the next. */
export function dxfTags(text: string): DxfTag[] {
  const lines = text.split(/\r?\n/);
  const tags: DxfTag[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2)
    tags.push([Number(lines[i]), (lines[i + 1] as string).trim()]);
  return tags;
}

/** The records of a kind, each as its groups up to the next record: `dxfRecords(tags, 'LAYER')`. */
export function dxfRecords(tags: readonly DxfTag[], kind: string): Map<number, string>[] {
  const records: Map<number, string>[] = [];
  tags.forEach(([code, value], i) => {
    if (code !== 0 || value !== kind) return;
    const record = new Map<number, string>();
    for (const [own, text] of tags.slice(i + 1)) {
      if (own === 0) break;
      if (!record.has(own)) record.set(own, text);
    }
    records.push(record);
  });
  return records;
}

/** Bytes of UTF-8 before the ending: every usual file system takes 255, and folders and numbers want some too. */
const STEM_MAX = 120;

/** Signs by which a spreadsheet knows a formula, and a command an option. */
const LEADING = /^[=+\-@＝＋－＠]/;

/** Names that Windows keeps for devices, with whatever ending. */
const RESERVED = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)/i;

function shortened(stem: string): string {
  let length = 0;
  let kept = '';
  for (const character of stem) {
    length += Buffer.byteLength(character);
    if (length > STEM_MAX) break;
    kept += character;
  }
  return kept;
}

/**
 * A file name that every system takes, as near to the wish as can be. `ending` is given without its dot.
 * Separators and signs with a meaning to some shell or system become a dash, control and invisible
 * characters vanish; what is left of nothing is "untitled". A name that would be taken for a device, a formula or an option
 * gets an underscore before it.
 */
export function safeFileName(wish: string, ending: string): string {
  const plain = wish
    .normalize('NFC')
    .toWellFormed()
    .replace(/[\p{Cc}\p{Cf}\uFFFD]/gu, ' ')
    .replace(/[<>:"/\\|?*]/g, '-')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+/, '');
  const stem = shortened(plain).replace(/[. ]+$/, '');
  return `${RESERVED.test(stem) || LEADING.test(stem) ? '_' : ''}${stem || 'untitled'}.${ending}`;
}

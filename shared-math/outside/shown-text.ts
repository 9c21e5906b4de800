/** Characters (UTF-16). Of a text from outside, a sentence shows no more. */
export const SHOWN_MOST = 60;

/** Characters. What lies beyond them is not even looked at: a text may be megabytes of signs that nobody can see. */
const LOOKED_AT = 2000;

/**
 * What does not show as itself: control and escape signs, line ends and every other kind of space, signs that turn the
 * direction of writing or are not seen at all, halves of signs (Unicode general categories Cc, Cf, Cs, Co, Z; UAX #9, #44).
 */
const UNSHOWN = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Z}\p{Default_Ignorable_Code_Point}\uFFFD\u2800]+/gu;

/** A message on one line, of signs that show as themselves; of any length. */
export function oneLine(message: string): string {
  return message.replaceAll(UNSHOWN, ' ').trim();
}

/** The first signs that fit into a length, no pair cut in half. */
function fitting(signs: Iterable<string>, most: number): string {
  let kept = '';
  for (const sign of signs) {
    if (kept.length + sign.length > most) break;
    kept += sign;
  }
  return kept;
}

/** A text from outside as it may stand in a sentence: on one line, of signs that show as themselves, cut at `most`. */
export function shownText(text: string, most: number = SHOWN_MOST): string {
  const plain = oneLine(text.slice(0, LOOKED_AT));
  if (plain.length <= most && text.length <= LOOKED_AT) return plain;
  return `${fitting(plain, most - 1).trimEnd()}…`;
}

/** The same for what is known by its end, as a file's path is. */
export function shownEnd(text: string, most: number = SHOWN_MOST): string {
  const plain = oneLine(text.slice(-LOOKED_AT));
  if (plain.length <= most && text.length <= LOOKED_AT) return plain;
  const end = [...fitting([...plain].reverse(), most - 1)].reverse().join('');
  return `…${end.trimStart()}`;
}

/** A text from outside in quotation marks. */
export function quoted(text: string): string {
  return `"${shownText(text)}"`;
}

/** Items named in a list: the first three, and how many more there are. */
export function listed(items: readonly string[], most = 3): string {
  const named = items.slice(0, most).map(quoted).join(', ');
  return items.length > most ? `${named} and ${items.length - most} more` : named;
}

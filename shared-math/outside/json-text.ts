import { failed, type Outcome, succeeded } from '../outcome.ts';
import { shownText } from './shown-text.ts';

/** No file or call of ours has brackets in one another as deep as this; a parser's stack does not bear any depth. */
export const DEPTH_MOST = 64;

/** A car of a thousand layouts holds about a million. Each costs far more memory parsed than its two characters of text. */
export const VALUES_MOST = 4_000_000;

/** Characters of a parser's message, which quotes a little of the text. */
const MESSAGE_MOST = 120;

const QUOTE = 34;
const COMMA = 44;
const BACKSLASH = 92;

/**
 * Why a text is not even given to a parser: brackets too deep in one another, or too many values; undefined if nothing
 * speaks against it. One pass over the text, which keeps nothing of it. Up to its first fault a text is read as a parser
 * reads it (RFC 8259), and no parser goes beyond that.
 */
function troubleOf(text: string): string | undefined {
  let depth = 0;
  let values = 0;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text.charCodeAt(at);
    if (sign === QUOTE) {
      // To the end of the string; a quotation mark behind an odd number of backslashes is part of it.
      do {
        at = text.indexOf('"', at + 1);
        if (at < 0) return undefined;
      } while (isEscaped(text, at));
      continue;
    }
    // Opening brackets are 0x5B and 0x7B, closing ones 0x5D and 0x7D.
    const bracket = sign | 0x20;
    if (bracket === 0x7b) {
      depth += 1;
      values += 1;
      if (depth > DEPTH_MOST) return `brackets stand in one another more than ${DEPTH_MOST} deep`;
    } else if (bracket === 0x7d) depth -= 1;
    else if (sign === COMMA) values += 1;
    if (values > VALUES_MOST) return `more than ${VALUES_MOST / 1e6} million values in it`;
  }
  return undefined;
}

function isEscaped(text: string, quote: number): boolean {
  let before = quote - 1;
  while (text.charCodeAt(before) === BACKSLASH) before -= 1;
  return (quote - before) % 2 === 0;
}

/**
 * What a text of JSON from outside says. A byte order mark before it is passed over. The failure is one clause without a
 * subject: "not JSON: …". Every outside text is parsed through here.
 */
export function parseJson(text: string): Outcome<unknown, string> {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const trouble = troubleOf(body);
  if (trouble !== undefined) return failed(trouble);
  try {
    return succeeded(JSON.parse(body) as unknown);
  } catch (error) {
    return failed(`not JSON: ${shownText((error as Error).message, MESSAGE_MOST)}`);
  }
}

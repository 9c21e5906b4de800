import { oneLine } from '../../../shared-math/outside/index.ts';
import { xmlText } from '../pens/xml.ts';

/** A piece of a page, ready to stand in it: only `html` and the functions of this file make one. */
export interface Html {
  readonly markup: string;
}

/** A text from outside as a piece of a page: on one line, its signs harmless, and turned by itself however it is written. */
export function outsideText(text: string): Html {
  return { markup: `<bdi>${xmlText(oneLine(text))}</bdi>` };
}

type Piece = Html | readonly Html[] | string | number;

function written(piece: Piece): string {
  if (typeof piece === 'string' || typeof piece === 'number') return xmlText(String(piece));
  if ('markup' in piece) return piece.markup;
  return piece.map(({ markup }) => markup).join('');
}

/** A piece of a page from a template: what is put into it is text, and escaped as such, unless it is a piece itself. */
export function html(strings: TemplateStringsArray, ...pieces: readonly Piece[]): Html {
  return { markup: String.raw({ raw: strings }, ...pieces.map(written)) };
}

/** What is script or style, given as it is; neither may end the element that it stands in. */
export function verbatim(source: string): Html {
  if (/<\/(?:script|style)|<!--/i.test(source)) throw new Error('a script or style would end its element');
  return { markup: source };
}

/** Data for the page's script: no sign of it can end the element that it stands in, or begin another. */
export function jsonText(value: unknown): Html {
  const escaped = (sign: string) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`;
  return { markup: JSON.stringify(value).replace(/[<>&\u2028\u2029]/g, escaped) };
}

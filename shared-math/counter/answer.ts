import type { CautionNote } from '../words/index.ts';

/** `waiting`: something has still to be asked. */
export type Tone = 'waiting' | 'good' | 'attention' | 'stop';

/** A figure that nobody gave, what was taken for it, and where that comes from. */
export interface Assumed {
  /** The field of the question that it stands in for; empty where the question has none. */
  readonly field: string;
  /** As it stands in the field's place: "30°". */
  readonly figure: string;
  /** A whole sentence, its source with it. */
  readonly words: string;
}

/** A sentence of an answer; `look` stands out as something to look to. */
export interface AnswerLine {
  readonly words: string;
  readonly tone?: 'good' | 'look' | 'stop';
}

/** A place of a sketch: right and down in the view, mm. */
export type SketchPoint = readonly [right: number, down: number];

/** A shaft as a view shows it: what is there already, what is to be made, and its joints. */
export interface Sketch {
  readonly title: string;
  /** Column and box, each from the part to its end. */
  readonly ends: readonly { readonly name: string; readonly from: SketchPoint; readonly to: SketchPoint }[];
  readonly line: readonly SketchPoint[];
  readonly joints: readonly { readonly at: SketchPoint; readonly double: boolean }[];
  readonly supports: readonly SketchPoint[];
}

/** One piece of an answer, as screen and paper set it: a heading with sentences, a table or sketches. */
export interface AnswerPart {
  readonly title: string;
  readonly lines?: readonly AnswerLine[];
  readonly table?: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
  readonly sketches?: readonly Sketch[];
}

/** What a question comes to: the same for the screen, the printed page and the ticket. */
export interface Answer {
  readonly tone: Tone;
  /** One sentence; of a question that waits, what has to be asked next. */
  readonly headline: string;
  readonly parts: readonly AnswerPart[];
  readonly assumed: readonly Assumed[];
  readonly cautions: readonly CautionNote[];
}

/** An answer that waits for what is named, with what would be assumed of the rest. */
export function waiting(
  headline: string,
  cautions: readonly CautionNote[],
  assumed: readonly Assumed[] = [],
): Answer {
  return { tone: 'waiting', headline, parts: [], assumed, cautions };
}

/** "A, b and c". */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

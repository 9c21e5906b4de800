import type { JointKind, JointSide, ShaftDocument, ShaftStock } from '../layout/index.ts';
import type { LengthStyle } from '../units/index.ts';
import { cutList, supportList } from './cuts.ts';
import type { Route } from './route.ts';
import { pieceWords, sideWords, sizeWords, stockWords } from './words.ts';

/** What a part is, as data for a shelf to look up; `words` says it to a person. */
export type ShaftPart =
  | {
      readonly kind: 'joint';
      readonly joint: JointKind;
      readonly columnSide: JointSide | undefined;
      readonly boxSide: JointSide | undefined;
    }
  | { readonly kind: 'stock'; readonly stock: ShaftStock; readonly length: number | undefined }
  | { readonly kind: 'support'; readonly bore: number | undefined }
  | { readonly kind: 'pinch-bolt'; readonly diameter: number }
  | { readonly kind: 'set-screw'; readonly diameter: number };

/** A line of a parts list. */
export interface PartLine {
  readonly part: ShaftPart;
  readonly count: number;
  /** "Single joint: round bore 3/4 in to weld; spline of 36 teeth …". */
  readonly words: string;
}

function jointWords(
  kind: JointKind,
  a: JointSide | undefined,
  b: JointSide | undefined,
  style: LengthStyle,
): string {
  const joint = kind === 'single' ? 'Single joint' : 'Double joint';
  if (!a && !b) return `${joint}, ends not chosen yet`;
  const side = (entry: JointSide | undefined) => (entry ? sideWords(entry, style) : 'one end not chosen yet');
  const [column, box] = [side(a), side(b)];
  return `${joint}: ${column === box ? `both ends ${column}` : `${column}; ${box}`}`;
}

/** Parts that are alike are one line with their count, in the order of their first appearance. */
function gathered(lines: readonly PartLine[]): PartLine[] {
  const found = new Map<string, PartLine>();
  for (const line of lines) {
    const same = found.get(line.words);
    found.set(line.words, same ? { ...same, count: same.count + line.count } : line);
  }
  return [...found.values()];
}

/**
 * What has to be on the bench: joints, stock by length, supports, bolts and set screws. A joint turned end for end is
 * the same joint; stock is listed by the piece, as each is cut to its own length.
 * Units: mm in the data, `style` in the words. Checked: tests/unit/shaft.test.ts.
 */
export function partsList(shaft: ShaftDocument, route: Route, style: LengthStyle): PartLine[] {
  const size = (mm: number) => sizeWords(mm, style);
  const joints = shaft.joints.map(({ kind, columnSide, boxSide }): PartLine => {
    // End for end: the two sides in the order of their words, so that a turned joint counts as the same.
    const words = [
      jointWords(kind, columnSide, boxSide, style),
      jointWords(kind, boxSide, columnSide, style),
    ].sort();
    return { part: { kind: 'joint', joint: kind, columnSide, boxSide }, count: 1, words: words[0] as string };
  });
  const stock = cutList(shaft, route).flatMap(({ shaft: index, pieces }): PartLine[] => {
    const chosen = shaft.shafts[index]?.stock;
    if (!chosen) return [];
    if (pieces.length === 0)
      return [
        {
          part: { kind: 'stock', stock: chosen, length: undefined },
          count: 1,
          words: `Shaft ${index + 1}: ${stockWords(chosen, style)}, length not known yet`,
        },
      ];
    return pieces.map(({ name, length, slides }) => ({
      part: { kind: 'stock', stock: chosen, length },
      count: 1,
      words: `${name}: ${pieceWords(chosen, slides, style)}, ${size(length)} long`,
    }));
  });
  const supports = supportList(shaft, route).map(
    ({ bore }): PartLine => ({
      part: { kind: 'support', bore },
      count: 1,
      words: `Support bearing, ${bore === undefined ? 'bore not known yet' : `bored ${size(bore)}`}`,
    }),
  );
  const fixings = shaft.joints.flatMap(({ columnSide, boxSide }) =>
    [columnSide, boxSide].flatMap((side): PartLine[] => {
      const bolt = side && 'bolt' in side ? side.bolt : undefined;
      const screw = side && 'screw' in side ? side.screw : undefined;
      return [
        ...(bolt
          ? [
              {
                part: { kind: 'pinch-bolt', diameter: bolt.diameter } as const,
                count: 1,
                words: `Pinch bolt ${size(bolt.diameter)} with locking nut`,
              },
            ]
          : []),
        ...(screw
          ? [
              {
                part: { kind: 'set-screw', diameter: screw.diameter } as const,
                count: 1,
                words: `Set screw ${size(screw.diameter)} with lock nut`,
              },
            ]
          : []),
      ];
    }),
  );
  return gathered([...joints, ...stock, ...supports, ...fixings]);
}

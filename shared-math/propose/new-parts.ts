import { type LayoutDocument, resolveLayout } from '../layout/index.ts';
import { needsOf, partsAgainstShelf } from '../shelf/index.ts';
import type { Car } from './car.ts';
import type { NewPart } from './proposal.ts';

/** What the steering is made of, by what its line of the parts list is called. */
const STEERING = /^(Steering box|Pitman arm|Steering arm for the drag link|Drag link|Lateral bar)/;
const SHAFT_KINDS = new Set(['joint', 'stock', 'support']);

/** The parts that a proposal asks for, held against the shelf; those that are held stand already. */
export function newPartsOf(car: Car, document: LayoutDocument): NewPart[] {
  const { held } = car;
  const needs = needsOf(resolveLayout(document), car.style).filter(({ words, wanted }) => {
    if (SHAFT_KINDS.has(wanted.kind)) return !held.has('shaft');
    if (!STEERING.test(words) || wanted.kind === 'fixing') return false;
    if (words.startsWith('Steering box')) return !held.has('box-kind');
    if (words.startsWith('Pitman arm')) return !held.has('pitman-arm');
    if (words.startsWith('Steering arm')) return !held.has('steering-arm');
    return !words.startsWith('Lateral bar') || !held.has('lateral');
  });
  return partsAgainstShelf(needs, car.shelf).map(({ need, toOrder }) => ({
    words: need.words,
    count: need.count,
    onShelf: need.count - toOrder,
  }));
}

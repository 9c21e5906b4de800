import { type LayoutDocument, resolveLayout, type ShaftDocument } from '../layout/index.ts';
import { routeOf, stubsOf } from '../shaft/index.ts';
import { needsOf, partsAgainstShelf } from '../shelf/index.ts';
import { lengthBeside } from '../units/index.ts';
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
  const parts = partsAgainstShelf(needs, car.shelf).map(({ need, toOrder }) => ({
    words: need.words,
    count: need.count,
    onShelf: need.count - toOrder,
  }));
  return [...parts, ...(held.has('shaft') || !document.shaft ? [] : stubParts(car, document.shaft))];
}

/** What an end takes that is made longer: the layout has no such parts, and the shelf neither. */
function stubParts({ style }: Car, shaft: ShaftDocument): NewPart[] {
  return stubsOf(routeOf(shaft)).flatMap(({ part, longer, bearing }) => {
    const by = lengthBeside(longer, [], style);
    const [whose, stub] =
      part === 'column'
        ? ['the column', `Longer shaft in the column, ${by} past its end`]
        : ['the box’s input', `Stub on the box’s input, ${by} past its end, with its coupling`];
    const held = { words: `Support bearing for what makes ${whose} longer`, count: 1, onShelf: 0 };
    return [{ words: stub, count: 1, onShelf: 0 }, ...(bearing ? [held] : [])];
  });
}

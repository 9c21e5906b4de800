// The shelf: what parts a shop has, their figures in plain words, which of them fit a need, and what has to be ordered.
export {
  type Against,
  type Drawn,
  entryWords,
  fittingParts,
  partsAgainstShelf,
} from './against.ts';
export {
  type Cell,
  type CellRefusal,
  cellText,
  cellValue,
  checkPart,
  headingOf,
  partFromCells,
  unitOf,
  wordOf,
} from './cells.ts';
export {
  type Choices,
  COLUMNS,
  choiceWords,
  columnsOf,
  isAsked,
  KIND_WORDS,
  PART_KINDS,
  putValue,
  type ShelfColumn,
  valueAt,
} from './columns.ts';
export { fitsNeed } from './fits.ts';
export { assumedWords, sectionWords, threadWords } from './link-needs.ts';
export { needsOf, shaftNeeds } from './needs.ts';
export type { PartNeed, Tilts, Wanted } from './part-need.ts';
export {
  type PartKind,
  type PartOf,
  type ShelfPart,
  type ShelfPartInput,
  type Shelved,
  shelfPartSchema,
} from './part-schema.ts';
export { partWords } from './part-words.ts';

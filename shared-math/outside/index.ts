// What comes from outside: read with care, known by its bytes, and shown so that it can do no harm to the sentence it stands in.
export { fileKind, LOOKED_AT } from './file-kinds.ts';
export { DEPTH_MOST, parseJson, VALUES_MOST } from './json-text.ts';
export { listed, oneLine, quoted, SHOWN_MOST, shownEnd, shownText } from './shown-text.ts';

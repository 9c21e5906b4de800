// What comes from outside: read with care, and shown so that it can do no harm to the sentence it stands in. What a file is by its
// bytes, file-kinds.ts, is asked seldom and stands by itself, so that a page loads it when somebody brings a file.
export { DEPTH_MOST, parseJson, VALUES_MOST } from './json-text.ts';
export { listed, oneLine, quoted, SHOWN_MOST, shownEnd, shownText } from './shown-text.ts';

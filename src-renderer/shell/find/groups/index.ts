// What can be found, in the order of the headings. A new kind of thing is one file here and one line in this list.
import type { FindGroupMaker } from '../find-group.ts';
import { foundActions } from './actions.ts';
import { foundFindings } from './findings.ts';
import { foundPoints } from './points.ts';
import { foundTickets } from './tickets.svelte.ts';
import { foundVariants } from './variants.ts';
import { foundWords } from './words.ts';

export const FIND_GROUPS: readonly FindGroupMaker[] = [
  foundActions,
  foundPoints,
  foundVariants,
  foundTickets,
  foundFindings,
  foundWords,
];

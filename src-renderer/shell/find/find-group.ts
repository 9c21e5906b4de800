/** One thing that can be found and gone to. */
export interface FindEntry {
  /** Its own in its group. */
  readonly id: string;
  readonly name: string;
  /** Beside the name and quieter: whose it is, where it stands. */
  readonly aside?: string;
  /** Further words by which it may be meant. */
  readonly also?: string;
  /** The keys that do the same. */
  readonly keys?: string;
  /** Goes there or does it; the drawer has been closed. */
  readonly run: () => void;
}

/** Things of one kind, under one heading. */
export interface FindGroup {
  readonly id: string;
  readonly title: string;
  /** Worked out when somebody looks; follows what it reads. */
  readonly entries: () => readonly FindEntry[];
}

/** Makes a group while the drawer's page is set up: it may read contexts. */
export type FindGroupMaker = () => FindGroup;

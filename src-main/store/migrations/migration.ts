/** One step of the database's build, frozen once released: it reads nothing of today's program. */
export interface Migration {
  /** The `user_version` it leads to; the first is 1. */
  readonly number: number;
  readonly name: string;
  /** SQL, run in one transaction. */
  readonly statements: string;
}

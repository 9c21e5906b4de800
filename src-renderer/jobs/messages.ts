// What page and worker say to one another. Plain data that a structured clone carries.

/** A piece of work that answers in one go, or in steps between which it can be called off. */
export type Job<Input, News, Answer> = (input: Input) => Generator<News, Answer>;

export type ToWorker =
  | { readonly kind: 'begin'; readonly id: number; readonly job: string; readonly input: unknown }
  | { readonly kind: 'call-off'; readonly id: number };

export type FromWorker =
  | { readonly kind: 'news'; readonly id: number; readonly news: unknown }
  | { readonly kind: 'answer'; readonly id: number; readonly answer: unknown }
  /** A defect of ours, not of the layout: those are answers. */
  | { readonly kind: 'broken'; readonly id: number; readonly reason: string };

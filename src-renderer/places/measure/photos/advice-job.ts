import { type AdviceTask, type Advised, adviceOn } from '../../../../shared-math/trace/index.ts';

/** Undefined if nothing can be foretold. */
export const adviceJob = (task: AdviceTask): Generator<undefined, Advised | undefined> => adviceOn(task);

import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { type ProposeQuestion, proposeTasks, type TaskResult } from '../../shared-math/propose/index.ts';

/**
 * All pieces of a search, on as many threads as the machine has processors; each takes the next piece when it is free. The
 * order in which they end says nothing. Ends at once where the signal says so, with its reason.
 */
export async function searchOnThreads(
  question: ProposeQuestion,
  signal: AbortSignal,
  threads: number = availableParallelism(),
): Promise<TaskResult[]> {
  const tasks = proposeTasks(question).map(({ task }) => task);
  const results: TaskResult[] = [];
  const workers = Array.from(
    { length: Math.min(threads, tasks.length) },
    () => new Worker(new URL('./propose-thread.ts', import.meta.url), { workerData: question }),
  );
  let next = 0;
  const oneThread = (worker: Worker) =>
    new Promise<void>((done, fail) => {
      const give = () => {
        const task = tasks[next];
        next += 1;
        if (task === undefined) done();
        else worker.postMessage(task);
      };
      worker.on('message', (result: TaskResult) => {
        results.push(result);
        give();
      });
      worker.on('error', fail);
      signal.addEventListener('abort', () => fail(signal.reason), { once: true });
      give();
    });
  try {
    signal.throwIfAborted();
    await Promise.all(workers.map(oneThread));
    return results;
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

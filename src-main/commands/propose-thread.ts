import { parentPort, workerData } from 'node:worker_threads';
import { type ProposeQuestion, proposeTask } from '../../shared-math/propose/index.ts';

// One thread of the command `propose`: it is given pieces of the search by their numbers and answers each as a whole.

const question = workerData as ProposeQuestion;

parentPort?.on('message', (task: number) => {
  const search = proposeTask(question, task);
  let step = search.next();
  while (!step.done) step = search.next();
  parentPort?.postMessage(step.value);
});

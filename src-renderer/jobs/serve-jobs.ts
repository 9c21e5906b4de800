import { JobRunner } from './job-runner.ts';
import type { FromWorker, ToWorker } from './messages.ts';

/** Answers the page from inside a worker: the runner, its jobs by name, and the line to the page. */
export function serveJobs(jobs: ConstructorParameters<typeof JobRunner>[0]): void {
  /** A channel of our own comes sooner than a timer, and after the messages that wait already. */
  const channel = new MessageChannel();
  const toDo: (() => void)[] = [];
  channel.port1.onmessage = () => toDo.shift()?.();

  const runner = new JobRunner(jobs, {
    send: (message: FromWorker) => self.postMessage(message),
    soon: (run) => {
      toDo.push(run);
      channel.port2.postMessage(null);
    },
  });

  self.onmessage = ({ data }: MessageEvent<ToWorker>) => runner.read(data);
}

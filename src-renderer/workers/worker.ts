import { bandJob } from './band-job.ts';
import { Desk } from './desk.ts';
import { mapJob } from './map-job.ts';
import type { FromWorker, ToWorker } from './messages.ts';
import { routeJob } from './route-job.ts';
import { sensitivityJob } from './sensitivity-job.ts';
import { holdsJob, tuneJob } from './tune-job.ts';

// The script that runs in the worker: the desk, its jobs, and the line to the page.

/** A channel of our own comes sooner than a timer, and after the messages that wait already. */
const channel = new MessageChannel();
const toDo: (() => void)[] = [];
channel.port1.onmessage = () => toDo.shift()?.();

const desk = new Desk(
  {
    map: mapJob,
    tune: tuneJob,
    holds: holdsJob,
    route: routeJob,
    sensitivity: sensitivityJob,
    band: bandJob,
  },
  {
    send: (message: FromWorker) => self.postMessage(message),
    soon: (run) => {
      toDo.push(run);
      channel.port2.postMessage(null);
    },
  },
);

self.onmessage = ({ data }: MessageEvent<ToWorker>) => desk.read(data);

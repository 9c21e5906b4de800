import { sensitivityJob } from '../panels/points/sensitivity-job.ts';
import { mapJob } from '../places/layout/map/map-job.ts';
import { bandJob } from '../places/layout/tolerance/band-job.ts';
import { holdsJob, tuneJob } from '../places/layout/tune/tune-job.ts';
import { routeJob } from '../places/shaft/route-job.ts';
import { Desk } from './desk.ts';
import type { FromWorker, ToWorker } from './messages.ts';

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

import { type RideRun, rideSteps } from '../../../shared-math/ride/index.ts';
import { HandOnAxle } from './hand.ts';
import type { FromRideWorker, ToRideWorker } from './ride-messages.ts';

// The script that runs in the ride worker: runs over a road, a breath at a time, and the hand on the axle, which never
// waits for more than a breath of a run.

type Order = ToRideWorker & { kind: 'run' };

const channel = new MessageChannel();
const hand = new HandOnAxle();
/** The newest order of each key, in the order in which they came. */
const orders = new Map<string, Order>();
let under: { readonly order: Order; readonly steps: ReturnType<typeof rideSteps> } | undefined;

const answer = (message: FromRideWorker | undefined, transfer: Transferable[] = []) => {
  if (message) self.postMessage(message, { transfer });
};

const buffersOf = (run: RideRun): Transferable[] =>
  Object.values(run).flatMap((column) => (ArrayBuffer.isView(column) ? [column.buffer as ArrayBuffer] : []));

/** One breath of the run that is under way, or the first of the next. */
function breathe(): void {
  if (!under || orders.get(under.order.key) !== under.order) {
    const [next] = orders.values();
    under = next && { order: next, steps: rideSteps(next.document, next.road, next.options) };
  }
  if (!under) return;
  const { id, key } = under.order;
  const step = under.steps.next();
  if (step.done) {
    orders.delete(key);
    under = undefined;
    if (step.value.ok) answer({ kind: 'ran', id, key, run: step.value.value }, buffersOf(step.value.value));
    else answer({ kind: 'not-run', id, key, refusal: step.value.failure });
  }
  if (orders.size > 0) channel.port2.postMessage(null);
}
channel.port1.onmessage = breathe;

self.onmessage = ({ data }: MessageEvent<ToRideWorker>) => {
  if (data.kind === 'take') answer(hand.take(data));
  else if (data.kind === 'pull') answer(hand.pull(data));
  else {
    const idle = orders.size === 0;
    orders.set(data.key, data);
    if (idle) channel.port2.postMessage(null);
  }
};

import type { FromRideWorker, ToRideWorker } from './ride-messages.ts';
import type { RideWorkerLine } from './start-ride-worker.ts';

type FromHand = FromRideWorker & { kind: 'moved' | 'not-held' };
type FromRun = FromRideWorker & { kind: 'ran' | 'not-run' };

/** The one line to the ride worker, for the hand and for the runs; the worker is started when something is first asked. */
export class RideLine {
  readonly #start: () => RideWorkerLine;
  #line: RideWorkerLine | undefined;
  #hand: (message: FromHand) => void = () => {};
  #run: (message: FromRun) => void = () => {};

  constructor(start: () => RideWorkerLine) {
    this.#start = start;
  }

  onHand(hear: (message: FromHand) => void): void {
    this.#hand = hear;
  }

  onRun(hear: (message: FromRun) => void): void {
    this.#run = hear;
  }

  send(message: ToRideWorker): void {
    if (!this.#line) {
      this.#line = this.#start();
      this.#line.listen((news) => {
        if (news.kind === 'moved' || news.kind === 'not-held') this.#hand(news);
        else this.#run(news);
      });
    }
    this.#line.send(message);
  }
}

import { FAILURES_MOST, LastingLine, type Line, lineTo } from '../jobs/worker-line.ts';
import type { ClearanceAnswer, ClearanceQuestion } from './clearance-worker.ts';

/** What measures clearances: a worker of the page, or its stand-in in tests. */
export interface Measurer {
  ask(question: ClearanceQuestion): void;
  onanswer: (answer: ClearanceAnswer) => void;
  /** It has failed at a question twice and will not answer it. */
  onfailure: (number: number) => void;
  /** Nothing more will be asked. */
  end(): void;
}

function startWorker(): Line<ClearanceQuestion, ClearanceAnswer> {
  return lineTo(new Worker(new URL('./clearance-worker.ts', import.meta.url), { type: 'module' }));
}

/** Measures in a worker. What it fails at is asked again of another, once. */
export function pageMeasurer(start: () => Line<ClearanceQuestion, ClearanceAnswer> = startWorker): Measurer {
  const waiting = new Map<number, { readonly question: ClearanceQuestion; failures: number }>();
  const again = () => {
    const given: number[] = [];
    for (const [number, entry] of waiting) {
      entry.failures += 1;
      if (entry.failures < FAILURES_MOST) line.send(entry.question);
      else given.push(number);
    }
    for (const number of given) {
      waiting.delete(number);
      measurer.onfailure(number);
    }
  };
  const hear = (answer: ClearanceAnswer) => {
    waiting.delete(answer.number);
    measurer.onanswer(answer);
  };
  const line = new LastingLine(start, hear, again);
  const measurer: Measurer = {
    ask: (question) => {
      waiting.set(question.number, { question, failures: 0 });
      line.send(question);
    },
    onanswer: () => {},
    onfailure: () => {},
    end: () => line.end(),
  };
  return measurer;
}

import type { BenchResult } from 'vitest';

/** Median time of one call in microseconds, of a benchmark whose function makes `calls` of them. */
export function microseconds(result: BenchResult, calls: number): number {
  return (result.latency.p50 * 1000) / calls;
}

/** One line: what was timed, ours, the peer's, and how many times ours goes into it. */
export function tellRatio(what: string, ours: number, peer: string, theirs: number): number {
  const ratio = theirs / ours;
  process.stdout.write(
    `${what}: ${ours.toFixed(3)} µs; ${peer}: ${theirs.toFixed(3)} µs; ${ratio.toFixed(1)} times as long\n`,
  );
  return ratio;
}

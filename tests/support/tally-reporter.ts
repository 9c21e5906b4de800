import type { Reporter, TestModule } from 'vitest/node';

/** Closes the output with one plain line of counts, after naming each skipped test and why it was skipped. */
export default class TallyReporter implements Reporter {
  onTestRunEnd(modules: ReadonlyArray<TestModule>, errors: ReadonlyArray<unknown>): void {
    let passed = 0;
    let failed = errors.length;
    const skipped: string[] = [];
    for (const module of modules) {
      failed += module.errors().length;
      for (const test of module.children.allTests()) {
        const result = test.result();
        if (result.state === 'passed') passed += 1;
        else if (result.state === 'failed') failed += 1;
        else {
          const why = 'note' in result && result.note ? result.note : 'no reason given';
          skipped.push(`skipped: ${test.fullName} (${why})`);
        }
      }
    }
    // Written on exit so that nothing another reporter prints can follow the tally.
    process.once('exit', () => {
      for (const line of skipped) process.stdout.write(`${line}\n`);
      process.stdout.write(`${passed} passed, ${failed} failed, ${skipped.length} skipped\n`);
    });
  }
}

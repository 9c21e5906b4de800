import { registerHooks } from 'node:module';
import { join, relative } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { INSTRUMENTER_CONSTANTS, type MutantCoverage } from '@stryker-mutator/api/core';
import { declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import {
  type CompleteDryRunResult,
  type DryRunResult,
  DryRunStatus,
  determineHitLimitReached,
  type MutantRunOptions,
  type MutantRunResult,
  type TestResult,
  type TestRunner,
  TestStatus,
  toMutantRunResult,
} from '@stryker-mutator/api/test-runner';
import { isPart, PARTS } from './parts.ts';
import { forget, nowIn, type Written, written } from './vitest-stand-in.ts';

/**
 * Runs the tests of a part in this one process, all mutants in the loaded sources and one of them switched on at a time:
 * a mutant costs what its tests cost, a few milliseconds, where a test runner made for people takes a quarter of a second
 * to begin. Node strips the types; the sources are loaded anew only for mutants of what is worked out on loading, and
 * every so often, after a run of all tests without a mutant that has to pass.
 */

interface Space {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  mutantCoverage?: MutantCoverage;
}

const world = globalThis as unknown as Record<string, Space>;
const space: Space = world[INSTRUMENTER_CONSTANTS.NAMESPACE] ?? {};
world[INSTRUMENTER_CONSTANTS.NAMESPACE] = space;

/** Mutants after which the sources are loaded anew: nothing that one left behind is there for long. */
const RELOAD_AFTER = 60;

const standIn = new URL('./vitest-stand-in.ts', import.meta.url).href;
let load = 0;

/** Our own files get a number that makes Node load them again; packages are loaded once. */
function watchImports(): void {
  const own = pathToFileURL(`${process.cwd()}/`).href;
  registerHooks({
    resolve(specifier, context, next) {
      if (specifier === 'vitest') return { url: standIn, shortCircuit: true };
      const found = next(specifier, context);
      const ours = found.url.startsWith(own) && !found.url.includes('/node_modules/');
      return ours && !found.url.includes('?') ? { ...found, url: `${found.url}?load=${load}` } : found;
    },
  });
}

class LeanRunner implements TestRunner {
  private stale = true;
  private runs = 0;
  /** ms, by id: quick tests are asked first. */
  private readonly times = new Map<string, number>();

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init(): Promise<void> {
    process.env['VITEST'] = 'true';
    watchImports();
  }

  private async loadTests(): Promise<void> {
    const part = process.env['MUTANTS_PART'] ?? '';
    if (!isPart(part)) throw new Error(`MUTANTS_PART names no part: "${part}"`);
    load += 1;
    forget();
    for (const path of PARTS[part].tests) {
      nowIn(path);
      await import(`${pathToFileURL(join(process.cwd(), path)).href}?load=${load}`);
    }
    this.stale = false;
    this.runs = 0;
  }

  private async runTest(one: Written): Promise<TestResult> {
    const started = performance.now();
    space.currentTestId = one.id;
    const base = { id: one.id, name: one.name, fileName: relative(process.cwd(), one.file) };
    try {
      await one.run();
      return { ...base, status: TestStatus.Success, timeSpentMs: performance.now() - started };
    } catch (error) {
      return {
        ...base,
        status: TestStatus.Failed,
        timeSpentMs: performance.now() - started,
        failureMessage: String(error instanceof Error ? error.message : error).slice(0, 500),
      };
    } finally {
      space.currentTestId = undefined;
    }
  }

  private async runAll(tests: readonly Written[], bail: boolean): Promise<CompleteDryRunResult> {
    const results: TestResult[] = [];
    for (const one of tests) {
      const result = await this.runTest(one);
      results.push(result);
      if (bail && result.status === TestStatus.Failed) break;
    }
    return { status: DryRunStatus.Complete, tests: results };
  }

  async dryRun(): Promise<DryRunResult> {
    await this.loadTests();
    const result = await this.runAll(written, false);
    for (const { id, timeSpentMs } of result.tests) this.times.set(id, timeSpentMs);
    const { mutantCoverage } = space;
    return mutantCoverage ? { ...result, mutantCoverage } : result;
  }

  /** All tests without a mutant: what does not pass now was spoilt by a mutant before. */
  private async checkClean(): Promise<void> {
    space.activeMutant = undefined;
    space.hitLimit = undefined;
    const spoilt = (await this.runAll(written, true)).tests.find(
      ({ status }) => status === TestStatus.Failed,
    );
    if (spoilt) throw new Error(`a mutant left something behind that fails "${spoilt.name}" without one`);
  }

  async mutantRun(options: MutantRunOptions): Promise<MutantRunResult> {
    const { activeMutant, hitLimit, mutantActivation, testFilter } = options;
    const early = mutantActivation === 'static';
    if (!this.stale && this.runs >= RELOAD_AFTER) {
      await this.checkClean();
      this.stale = true;
    }
    space.activeMutant = early ? activeMutant.id : undefined;
    space.hitCount = hitLimit === undefined ? undefined : 0;
    space.hitLimit = hitLimit;
    if (early || this.stale) {
      try {
        await this.loadTests();
      } catch (error) {
        // Sources that do not even load with it: every test fails.
        this.stale = true;
        return toMutantRunResult({
          status: DryRunStatus.Complete,
          tests: [
            {
              id: written[0]?.id ?? 'load',
              name: 'load',
              status: TestStatus.Failed,
              timeSpentMs: 0,
              failureMessage: String(error).slice(0, 500),
            },
          ],
        });
      }
    }
    this.stale = early;
    this.runs += 1;
    space.activeMutant = activeMutant.id;
    const wanted = testFilter === undefined ? written : written.filter(({ id }) => testFilter.includes(id));
    const time = ({ id }: Written) => this.times.get(id) ?? 0;
    const result = await this.runAll(
      [...wanted].sort((a, b) => time(a) - time(b)),
      true,
    );
    space.activeMutant = undefined;
    const endless = determineHitLimitReached(space.hitCount, hitLimit);
    return toMutantRunResult(endless ?? result, false);
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, 'lean', LeanRunner)];

import { globSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const FUNCTION = /(?:(\/\*\*(?:(?!\*\/)[\s\S])*\*\/)\n)?export (?:async )?function\*? (\w+)/g;

/** The exported functions of a source, each with the comment above it or nothing. */
function functionsOf(text: string): { name: string; comment: string | undefined }[] {
  return [...text.matchAll(FUNCTION)].map((match) => ({ name: match[2] as string, comment: match[1] }));
}

const paths = (folders: string) => globSync(`${folders}/**/*.ts`, { cwd: root });

describe('docstrings', () => {
  test('every exported function of the kinematics says what it gives', () => {
    const bare = [
      'shared-math/pose',
      'shared-math/linkage',
      'shared-math/sweep',
      'shared-math/aim',
      'shared-math/adjust',
      'shared-math/solve',
      'shared-math/layout',
      'shared-math/ride',
      'shared-math/shaft',
      'shared-math/splines',
    ].flatMap((folder) =>
      paths(folder).flatMap((path) =>
        functionsOf(readFileSync(join(root, path), 'utf8'))
          .filter(({ name, comment }) => !comment && !ALLOWED.has(name))
          .map(({ name }) => `${path}: ${name}`),
      ),
    );
    expect(bare).toEqual([]);
  });

  test('those that solve give frame or units, outcomes, source and where they are checked', () => {
    const wanted = [
      'closeLink',
      'solveAxle',
      'solveFrontEnd',
      'adjust',
      'findMisfits',
      'leastSquares',
      'findAim',
      'findBestSpot',
      'fitCircle',
      'routeOf',
      'prepareChain',
      'motionOf',
      'bestClocks',
      'suggestRoute',
      'turnThroughShaft',
      'worstOneWheel',
      'zeroSlopeLine',
      'countTeeth',
      'fillRow',
      'fillMap',
      'gjkDistance',
      'segmentToSegment',
      'segmentToRing',
      'leastDistance',
      'leastClearances',
      'markHits',
      'searchLeast',
      'tune',
      'sensitivityOf',
      'toleranceBand',
      'runRide',
      'stepRide',
    ];
    const found = paths('shared-math').flatMap((path) => functionsOf(readFileSync(join(root, path), 'utf8')));
    for (const name of wanted) {
      const comment = found.find((entry) => entry.name === name)?.comment ?? '';
      for (const label of ['Frame:', 'Units:', 'Outcomes:', 'Source:', 'Checked:'])
        expect(comment, name).toContain(label);
      // A check that a docstring names is a file that exists.
      for (const [path] of comment.matchAll(/tests\/[\w/-]+\.test\.ts/g))
        expect(globSync(path, { cwd: root }), `${name} names ${path}`).toHaveLength(1);
    }
  });

  test('the reader of docstrings can tell a bare function', () => {
    expect(functionsOf('export function bare() {}')).toEqual([{ name: 'bare', comment: undefined }]);
    expect(functionsOf('/** Says. */\nexport function told() {}')[0]?.comment).toBe('/** Says. */');
  });
});

/** Their names and types say all there is. */
const ALLOWED = new Set([
  'distance',
  'prepareAxle',
  'linkLengths',
  'flattenRows',
  'holdTravel',
  'summariseTravel',
]);

describe('files tell one story', () => {
  test('none of the sources is longer than 500 lines', () => {
    const long = ['shared-math', 'src-main', 'src-renderer'].flatMap((folder) =>
      globSync(`${folder}/**/*.{ts,svelte}`, { cwd: root })
        .map((path) => ({ path, lines: readFileSync(join(root, path), 'utf8').split('\n').length }))
        .filter(({ lines }) => lines > 500),
    );
    expect(long).toEqual([]);
  });

  test('there are no default exports and no star exports, except where a tool insists', () => {
    const insisting = /(^|\/)(svelte\.config\.js)$/;
    const broken = ['shared-math', 'src-main', 'src-renderer'].flatMap((folder) =>
      globSync(`${folder}/**/*.{ts,js}`, { cwd: root }).filter(
        (path) =>
          !insisting.test(path) && /^export (default|\*)/m.test(readFileSync(join(root, path), 'utf8')),
      ),
    );
    expect(broken).toEqual([]);
  });
});

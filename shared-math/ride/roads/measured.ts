import type { Refusal } from '../../layout/index.ts';
import { failed, type Outcome, succeeded } from '../../outcome.ts';
import { quoted } from '../../outside/index.ts';
import { type RoadKindOf, rangeProblem } from './road-kind.ts';

/** A measured road: heights at distances that grow, straight lines between, level beyond its ends. mm. */
export interface MeasuredRoad {
  readonly kind: 'measured';
  readonly distance: readonly number[];
  readonly left: readonly number[];
  readonly right: readonly number[];
}

/** mm. Beyond this a height is a slip, or the profile still holds the hill that the road lies on. */
const HEIGHT_MOST = 1000;
const ROWS_MOST = 200_000;
/** Characters. */
export const ROAD_TEXT_MAX = 16_000_000;

/** Height at a distance by the straight line between two rows. The last row found is kept, as wheels roll on. */
function along(distances: readonly number[], heights: readonly number[]) {
  const last = distances.length - 1;
  let row = 0;
  return (distance: number): number => {
    if (distance <= (distances[0] as number)) return heights[0] as number;
    if (distance >= (distances[last] as number)) return heights[last] as number;
    if (distance < (distances[row] as number)) row = 0;
    while (distance >= (distances[row + 1] as number)) row += 1;
    const from = distances[row] as number;
    const share = (distance - from) / ((distances[row + 1] as number) - from);
    return (heights[row] as number) + share * ((heights[row + 1] as number) - (heights[row] as number));
  };
}

function rowProblem(at: string, numbers: readonly number[], before: number | undefined): Refusal | undefined {
  const [distance, left, right] = numbers as [number, number, number];
  if (before !== undefined && distance <= before)
    return { path: at, reason: `the distance must grow: ${distance} comes after ${before}` };
  return [left, right].every((height) => Math.abs(height) <= HEIGHT_MOST)
    ? undefined
    : {
        path: at,
        reason: `heights go from -${HEIGHT_MOST} to ${HEIGHT_MOST} mm, found ${left} and ${right}`,
      };
}

export const measured: RoadKindOf<MeasuredRoad> = {
  // A dip of an inch.
  usual: { kind: 'measured', distance: [2000, 2300, 2600], left: [0, -25, 0], right: [0, -25, 0] },
  fields: [],
  problem: ({ distance, left, right }) => {
    if (distance.length < 2) return { path: 'road', reason: 'has no length: at least two rows are needed' };
    if (distance.length > ROWS_MOST) return rangeProblem('rows', distance.length, 2, ROWS_MOST, '');
    if (left.length !== distance.length || right.length !== distance.length)
      return { path: 'road', reason: 'has not as many heights as distances' };
    for (let row = 0; row < distance.length; row += 1) {
      const numbers = [distance[row], left[row], right[row]] as number[];
      if (!numbers.every(Number.isFinite)) return { path: `road row ${row + 1}`, reason: 'is no number' };
      const problem = rowProblem(`road row ${row + 1}`, numbers, distance[row - 1]);
      if (problem) return problem;
    }
    return undefined;
  },
  prepare: ({ distance, left, right }) => ({
    leftAt: along(distance, left),
    rightAt: along(distance, right),
  }),
};

const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/;

/**
 * Takes the text of a table as a road: distance, left and right height in mm on each line, parted by commas, semicolons
 * or tabs. A first line of words is its heading; empty lines and those that begin with # are passed over.
 * Outcomes: the road, or the line that is wrong and why.
 */
export function parseRoadTable(text: string): Outcome<MeasuredRoad, Refusal> {
  if (text.length > ROAD_TEXT_MAX)
    return failed({ path: '', reason: 'too large to be a road (more than 16 million characters)' });
  const road = {
    kind: 'measured' as const,
    distance: [] as number[],
    left: [] as number[],
    right: [] as number[],
  };
  let headed = false;
  for (const [index, line] of text
    .replace(/^\ufeff/, '')
    .split(/\r\n|\r|\n/)
    .entries()) {
    if (line.trim() === '' || line.startsWith('#')) continue;
    const path = `line ${index + 1}`;
    const cells = line.split(/[,;\t]/).map((cell) => cell.trim());
    const first = road.distance.length === 0 && !headed;
    if (first && cells.every((cell) => !NUMBER.test(cell))) {
      headed = true;
      continue;
    }
    if (cells.length !== 3)
      return failed({
        path,
        reason: `expected three numbers (distance, left, right in mm), found ${cells.length === 1 ? quoted(line) : `${cells.length} entries`}`,
      });
    const wrong = cells.find((cell) => !NUMBER.test(cell) || !Number.isFinite(Number(cell)));
    if (wrong !== undefined) return failed({ path, reason: `${quoted(wrong)} is not a number` });
    const numbers = cells.map(Number) as [number, number, number];
    const problem = rowProblem(path, numbers, road.distance.at(-1));
    if (problem) return failed(problem);
    if (road.distance.length === ROWS_MOST)
      return failed({ path, reason: `more than ${ROWS_MOST} rows of road` });
    road.distance.push(numbers[0]);
    road.left.push(numbers[1]);
    road.right.push(numbers[2]);
  }
  if (road.distance.length === 0)
    return failed({ path: '', reason: 'holds no road: there is no line with three numbers' });
  if (road.distance.length === 1)
    return failed({ path: '', reason: 'holds one place only: a road needs at least two lines' });
  return succeeded(road);
}

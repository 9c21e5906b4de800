import { refusalLine } from '../../shared-math/layout/index.ts';
import { quoted } from '../../shared-math/outside/index.ts';
import {
  parseRoadTable,
  ROAD_TEXT_MAX,
  type RoadKind,
  type RoadProfile,
  USUAL_ROADS,
} from '../../shared-math/ride/index.ts';
import { plainNumber } from './arguments.ts';
import { readText, shown } from './layout-file.ts';
import { InputError, UsageError } from './usage.ts';

/** What may be given of a road beside its kind; the measured one is a file. Class and seed have options of their own. */
const OWN_OPTIONS = new Set(['roadClass', 'seed']);

const KINDS = Object.keys(USUAL_ROADS) as RoadKind[];

function keysOf(kind: RoadKind): string[] {
  return Object.keys(USUAL_ROADS[kind]).filter((key) => key !== 'kind' && !OWN_OPTIONS.has(key));
}

function readMeasured(file: string | undefined): RoadProfile {
  if (file === undefined) throw new UsageError('--road measured needs its table, as measured:file=ROAD.csv');
  const road = parseRoadTable(readText(file, ROAD_TEXT_MAX, 'a road'));
  if (!road.ok) throw new InputError(`${shown(file)}: ${refusalLine(road.failure)}`);
  return road.value;
}

/** A side of the car, or both where the road has it under both. */
function readSide(kind: RoadKind, value: string): string {
  const sides = kind === 'kerb' ? ['left', 'right', 'both'] : ['left', 'right'];
  if (!sides.includes(value))
    throw new UsageError(`--road: side is ${sides.join(' or ')}, found ${quoted(value)}`);
  return value;
}

/** Reads KIND:key=value,key=value into a road; what is left out is usual. Lengths in mm. */
export function readRoad(text: string, options: ReadonlyMap<string, string>): RoadProfile {
  const colon = text.indexOf(':');
  const name = colon < 0 ? text : text.slice(0, colon);
  const kind = KINDS.find((entry) => entry === name);
  if (!kind) throw new UsageError(`--road: there is no road ${quoted(name)}; there are ${KINDS.join(', ')}`);
  for (const option of ['class', 'seed'])
    if (options.has(option) && kind !== 'random')
      throw new UsageError(`--${option} belongs to --road random`);
  // A file's name may hold commas.
  if (kind === 'measured') return readMeasured(/^measured:file=(.+)$/s.exec(text)?.[1]);
  const given = new Map<string, string>();
  const known = keysOf(kind);
  for (const part of colon < 0 ? [] : text.slice(colon + 1).split(',')) {
    const equals = part.indexOf('=');
    const key = part.slice(0, Math.max(0, equals)).trim();
    if (!known.includes(key))
      throw new UsageError(
        `--road: ${quoted(part)} tells nothing of ${kind}; ${known.length === 0 ? 'it takes nothing' : `it takes ${known.map((entry) => `${entry}=…`).join(', ')}`}`,
      );
    if (given.has(key)) throw new UsageError(`--road: ${key} is given twice`);
    given.set(key, part.slice(equals + 1).trim());
  }
  const road: Record<string, unknown> = { ...USUAL_ROADS[kind] };
  for (const [key, value] of given) {
    if (key === 'side') road[key] = readSide(kind, value);
    else {
      const number = plainNumber(value);
      if (!Number.isFinite(number)) throw new UsageError(`--road: ${key} ${quoted(value)} is not a number`);
      road[key] = number;
    }
  }
  if (kind === 'random') {
    const seed = options.get('seed');
    if (seed !== undefined) road['seed'] = plainNumber(seed);
    const roadClass = options.get('class');
    if (roadClass !== undefined) road['roadClass'] = roadClass.trim().toUpperCase();
  }
  return road as unknown as RoadProfile;
}

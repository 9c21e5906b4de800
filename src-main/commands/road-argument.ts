import { refusalLine } from '../../shared-math/layout/index.ts';
import { quoted } from '../../shared-math/outside/index.ts';
import {
  parseRoadTable,
  ROAD_KINDS,
  ROAD_TEXT_MAX,
  type RoadField,
  type RoadKind,
  type RoadProfile,
  roadKind,
} from '../../shared-math/ride/index.ts';
import { plainNumber } from './arguments.ts';
import { readText, shown } from './layout-file.ts';
import { InputError, UsageError } from './usage.ts';

const KINDS = Object.keys(ROAD_KINDS) as RoadKind[];

/** What the command line says of each road's own options: "[--class A-H] [--seed N]". */
export const ROAD_OPTIONS: readonly NonNullable<RoadField<object>['option']>[] = KINDS.flatMap((kind) =>
  roadKind(kind).fields.flatMap(({ option }) => option ?? []),
);

/** The roads by name, as a help says them. */
export const ROAD_NAMES = KINDS.map((kind) =>
  kind === 'measured' ? 'measured:file=ROAD.csv (distance, left, right in mm)' : kind,
).join(', ');

function keysOf(kind: RoadKind): string[] {
  const { fields, usual } = roadKind(kind);
  return [
    ...fields.flatMap(({ key, option }) => (option ? [] : key)),
    ...('start' in usual ? ['start'] : []),
  ];
}

function readMeasured(file: string | undefined): RoadProfile {
  if (file === undefined) throw new UsageError('--road measured needs its table, as measured:file=ROAD.csv');
  const road = parseRoadTable(readText(file, ROAD_TEXT_MAX, 'a road'));
  if (!road.ok) throw new InputError(`${shown(file)}: ${refusalLine(road.failure)}`);
  return road.value;
}

/** A figure of a road as it was typed: one of its choices, or a number. */
function readFigure(kind: RoadKind, key: string, value: string): string | number {
  const field = roadKind(kind).fields.find((entry) => entry.key === key);
  if (field?.holds === 'choice' && !field.option) {
    const choices = field.choices.map(([choice]) => choice);
    if (!choices.includes(value))
      throw new UsageError(`--road: ${key} is ${choices.join(' or ')}, found ${quoted(value)}`);
    return value;
  }
  const number = plainNumber(value);
  if (!Number.isFinite(number)) throw new UsageError(`--road: ${key} ${quoted(value)} is not a number`);
  return number;
}

/** Reads KIND:key=value,key=value into a road; what is left out is usual. Lengths in mm. */
export function readRoad(text: string, options: ReadonlyMap<string, string>): RoadProfile {
  const colon = text.indexOf(':');
  const name = colon < 0 ? text : text.slice(0, colon);
  const kind = KINDS.find((entry) => entry === name);
  if (!kind) throw new UsageError(`--road: there is no road ${quoted(name)}; there are ${KINDS.join(', ')}`);
  for (const [other, { fields }] of KINDS.map((entry) => [entry, roadKind(entry)] as const))
    for (const { option } of fields)
      if (option && options.has(option.name) && other !== kind)
        throw new UsageError(`--${option.name} belongs to --road ${other}`);
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
  const { usual, fields } = roadKind(kind);
  const road: Record<string, unknown> = { ...usual };
  for (const [key, value] of given) road[key] = readFigure(kind, key, value);
  for (const { key, option, holds } of fields) {
    const value = option && options.get(option.name);
    // What is no such figure is refused with the road, by its own range.
    if (value !== undefined) road[key] = holds === 'choice' ? value.trim().toUpperCase() : plainNumber(value);
  }
  return road as unknown as RoadProfile;
}

import Papa from 'papaparse';
import {
  type CarSurvey,
  INSTRUMENT_WORDS,
  type ListRow,
  wayOf,
} from '../../shared-math/adjust/list/index.ts';
import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { quoted } from '../../shared-math/outside/index.ts';
import type { LengthUnit } from '../../shared-math/units/index.ts';
import { DEFUSED, delimiterOf, FORMULA, linesOf } from './csv-lines.ts';

// The list of what is measured on a car as a table file, to be filled in a spreadsheet and taken back.

/** Characters. A list has some tens of lines. */
export const MEASURING_TEXT_MAX = 400_000;

const HEAD = ['row', 'what to measure', 'counted', 'with', 'unit', 'figure'] as const;

/** The list with what has been measured so far, each figure as it was typed. */
export function measuringCsv(list: readonly ListRow[], car: CarSurvey, unit: LengthUnit): string {
  const rows = list.map((row) => {
    const entry = car.taken[row.id];
    const way = wayOf(row, car);
    return [
      row.id,
      row.name,
      way.name,
      INSTRUMENT_WORDS[entry?.instrument ?? row.instrument],
      way.unit === 'angle' ? 'degrees' : unit,
      entry?.typed ?? '',
    ];
  });
  return `\uFEFF${Papa.unparse([[...HEAD], ...rows], { newline: '\r\n', escapeFormulae: FORMULA })}\r\n`;
}

/** A filled line: which row of the list, how it was counted (where the file says so), and the figure as it was written. */
export interface MeasuredLine {
  /** Counted as an editor counts, from 1. */
  readonly line: number;
  readonly row: string;
  readonly counted: string;
  /** What a bare number is in; empty where the file does not say. */
  readonly unit: '' | LengthUnit | 'degrees';
  readonly figure: string;
}

const UNITS: Record<string, MeasuredLine['unit']> = {
  '': '',
  in: 'in',
  inch: 'in',
  inches: 'in',
  mm: 'mm',
  millimetres: 'mm',
  degrees: 'degrees',
  deg: 'degrees',
  '°': 'degrees',
};

const plain = (text: string) => text.trim().toLowerCase().replaceAll(/\s+/g, ' ');

/**
 * Reads a filled list. Lines without a figure stay open and are left out; the figures themselves are not read here.
 * Outcomes: the filled lines, or the first thing that is wrong, by its line.
 */
export function readMeasuringCsv(text: string): Outcome<MeasuredLine[], string> {
  if (text.length > MEASURING_TEXT_MAX)
    return failed(`a list of ${MEASURING_TEXT_MAX.toLocaleString('en')} characters at most`);
  const bare = text.replace(/^\uFEFF/, '');
  const lines = linesOf(bare, delimiterOf(bare));
  if (!lines.ok) return lines;
  const [head, ...rest] = lines.value;
  if (!head) return failed('there is nothing in it');
  const at = (name: (typeof HEAD)[number]) => head.cells.findIndex((cell) => plain(cell) === name);
  for (const name of ['row', 'figure'] as const)
    if (at(name) < 0)
      return failed(`there is no column "${name}": the first line has to say what each column is`);
  const found: MeasuredLine[] = [];
  const rows = new Map<string, number>();
  for (const { number, cells } of rest) {
    const cell = (name: (typeof HEAD)[number]) => (cells[at(name)] ?? '').replace(DEFUSED, '').trim();
    const figure = cell('figure');
    if (figure === '') continue;
    const row = cell('row');
    if (row === '') return failed(`line ${number}: has a figure and no row`);
    const before = rows.get(row);
    if (before !== undefined)
      return failed(`line ${number}: the row ${quoted(row)} stands on line ${before} too`);
    rows.set(row, number);
    const unit = UNITS[plain(cell('unit'))];
    if (unit === undefined)
      return failed(`line ${number}: ${quoted(cell('unit'))} is no unit: in, mm or degrees`);
    found.push({ line: number, row, counted: cell('counted'), unit, figure });
  }
  if (found.length === 0) return failed('no line of it has a figure');
  return succeeded(found);
}

import { aim } from './aim.ts';
import { brake } from './brake.ts';
import { check } from './check.ts';
import { draw } from './draw.ts';
import { film } from './film.ts';
import { forces } from './forces.ts';
import { handbook } from './handbook.ts';
import { map } from './map.ts';
import { measure } from './measure.ts';
import { propose } from './propose.ts';
import { ride } from './ride.ts';
import { schema } from './schema.ts';
import { shaft } from './shaft.ts';
import { sheet } from './sheet.ts';
import { sit } from './sit.ts';
import { spline } from './spline.ts';
import { sweep } from './sweep.ts';
import { table } from './table.ts';
import { tune } from './tune.ts';
import { turn } from './turn.ts';
import type { Command } from './usage.ts';

/** The commands of the command line. A new one is one file and one line here. */
export const COMMANDS: readonly Command[] = [
  measure,
  sweep,
  turn,
  brake,
  forces,
  sit,
  aim,
  map,
  tune,
  propose,
  ride,
  shaft,
  spline,
  sheet,
  draw,
  film,
  check,
  table,
  schema,
  handbook,
];

export { asksForHelp } from './arguments.ts';
export { type Command, InputError, UsageError } from './usage.ts';

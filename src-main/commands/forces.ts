import {
  type ArmAt,
  type FigureReach,
  FORCES_CAUTION,
  FORCES_LEFT_OUT,
  type LinkMargins,
  type LoadCase,
  linkForces,
  linkMargins,
  type Margin,
  NO_FORCES,
  type Peak,
  type Reach,
} from '../../shared-math/forces/index.ts';
import { type Layout, refusalLine, resolveLayout } from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import {
  armMaking,
  type CutLength,
  cutLength,
  linkMaking,
  MATERIALS,
} from '../../shared-math/links/index.ts';
import { toDegrees, toRadians } from '../../shared-math/units/index.ts';
import { headOf, lineOf } from '../output/tables/column.ts';
import { FORCE_COLUMNS, forceRows } from '../output/tables/forces.ts';
import { onlyFile, single, takeArguments } from './arguments.ts';
import { readLayoutFile, shown } from './layout-file.ts';
import { type Answer, type Command, InputError } from './usage.ts';

/** What a case's two loads are measured in. */
const LOAD_UNIT = { parking: 'grip', box: 'N·m', braking: 'grip' } as const;

function reachData({ least, most }: Reach, per: number) {
  const peak = ({ value, handwheel }: Peak) => ({ value: value / per, handwheel: toDegrees(handwheel) });
  return { least: peak(least), most: peak(most) };
}

function figureData({ figure, light, heavy }: FigureReach) {
  const moment = figure.kind === 'moment';
  return {
    id: figure.id,
    name: figure.name,
    kind: figure.kind,
    unit: moment ? 'N·m' : 'N',
    light: reachData(light, moment ? 1000 : 1),
    heavy: reachData(heavy, moment ? 1000 : 1),
  };
}

/** Moments in N·m, the stress in N/mm². */
function armData({ swing, side, twist, drop, stress, share, assumed, handwheel }: ArmAt) {
  return {
    swing: swing / 1000,
    side: side / 1000,
    twist: twist / 1000,
    drop,
    stress,
    shareOfYield: share,
    assumed,
    handwheel: toDegrees(handwheel),
  };
}

function caseData(loads: LoadCase, layout: Layout) {
  const { id, loads: pair, assumed, figures, arms, failure } = loads;
  return {
    id,
    loads: { light: pair[0], heavy: pair[1], unit: LOAD_UNIT[id], assumed },
    failure:
      failure === undefined
        ? null
        : {
            name: failure.failure,
            handwheel: toDegrees(failure.handwheel),
            reason: NO_FORCES[failure.failure],
          },
    figures: figures.map(figureData),
    arms: arms.map(({ key, side, light, heavy }) => ({
      arm: key,
      side: side ?? null,
      section: armMaking(layout, key),
      light: armData(light),
      heavy: armData(heavy),
    })),
  };
}

function marginData({ times, by, force, handwheel }: Margin) {
  return { times: times ?? null, by, force, handwheel: toDegrees(handwheel) };
}

function cutData({ cut, assumed, steps, rooms, shorter, longer }: CutLength) {
  return {
    length: cut,
    assumed,
    steps: steps.map(({ of, end, adds, assumed: guessed }) => ({
      of,
      end: end?.name ?? null,
      adds,
      assumed: guessed,
    })),
    ends: rooms.map((room) => room ?? null),
    shorter,
    longer,
  };
}

function linkData(layout: Layout, { figure, bears, cases }: LinkMargins) {
  const making = linkMaking(layout, figure.link.key);
  const cut = cutLength(making, figure.link.length);
  return {
    id: figure.id,
    name: figure.name,
    length: figure.link.length,
    madeOf: making,
    yield: MATERIALS[making.material.value],
    bears,
    margins: Object.fromEntries(
      cases.map(({ id, light, heavy }) => [id, { light: marginData(light), heavy: marginData(heavy) }]),
    ),
    cut: cut.ok ? cutData(cut.value) : null,
  };
}

function* answer(file: string, options: ReadonlyMap<string, string>, csv: boolean): Answer {
  const heave = single(options, 'heave', 20_000);
  const roll = single(options, 'roll', 180);
  const layout = resolveLayout(readLayoutFile(file));
  const forces = linkForces(prepareFrontEnd(layout), heave, toRadians(roll));
  if (!forces.ok) throw new InputError(`${shown(file)}: ${refusalLine(forces.failure)}`);
  const { cases } = forces.value;
  if (csv) {
    yield `${headOf(FORCE_COLUMNS)}\n`;
    for (const row of forceRows(cases)) yield `${lineOf(FORCE_COLUMNS, row)}\n`;
    return;
  }
  yield `${JSON.stringify(
    {
      format: 'toeboard-forces',
      version: 1,
      layout: layout.name,
      heave,
      roll,
      cases: cases.map((each) => caseData(each, layout)),
      links: linkMargins(layout, forces.value).map((each) => linkData(layout, each)),
      caution: FORCES_CAUTION,
      leftOut: FORCES_LEFT_OUT,
    },
    null,
    1,
  )}\n`;
}

export const forces: Command = {
  name: 'forces',
  usage: 'forces LAYOUT.json [--heave MM] [--roll DEGREES] [--csv]',
  about: [
    'What links, arms and shafts take when the car is parked, when the box gives its most against a held wheel, and braked hard.',
    'light and heavy are the two loads of a case (grip, or N·m at the sector shaft); least and most the figure each way over the',
    'turn, with the handwheel there: N, pull above 0; N·m; degrees. bears is what a link stands as a strut and pulled, by what it',
    'is made of (assumed: nobody gave it); times how often that is what a case asks. Rough bounds: they prove no part.',
  ].join('\n      '),
  run(args) {
    const taken = takeArguments(args, { values: ['heave', 'roll'], flags: ['csv'] });
    return answer(onlyFile(taken), taken.values, taken.flags.has('csv'));
  },
};

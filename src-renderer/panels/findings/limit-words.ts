import { LIMIT_NAMES, type LimitName } from '../../../shared-math/findings/index.ts';

type Group = readonly [title: string, names: readonly LimitName[]];

const GROUPS: readonly Group[] = [
  ['Bump and roll', ['bumpSteerWorst', 'bumpSteerSlope', 'aimHeight', 'rollOversteer']],
  [
    'Links and balls',
    ['ballTilt', 'transmissionLeast', 'barLinkAngle', 'barLinkLength', 'bind', 'beamTwist'],
  ],
  ['Turn', ['lockLeast', 'lockMost', 'lockApart', 'ratioLeast', 'ratioMost', 'turnsLeast', 'turnsMost']],
  ['Room', ['clearanceMoving', 'clearanceTyre']],
  ['Caster and toe', ['casterLeast', 'casterMost', 'casterChange', 'toeLeast', 'toeMost']],
  ['Steering shaft', ['boxInput', 'jointSingle', 'jointDouble', 'shaftSpan']],
  ['Effort', ['rimForce']],
];

const grouped = new Set(GROUPS.flatMap(([, names]) => names));
const others = LIMIT_NAMES.filter((name) => !grouped.has(name));

/** The limits by what they are about, in the order in which a front end is laid out; those of no group come last. */
export const LIMIT_GROUPS: readonly Group[] = others.length > 0 ? [...GROUPS, ['Others', others]] : GROUPS;

/** What to know before setting one, where there is something. */
export const LIMIT_HINTS: Partial<Record<LimitName, string>> = {
  ballTilt: 'Type the figure of the maker of your balls and rod ends.',
  toeLeast: 'Total of both wheels, over the tyre’s diameter.',
};

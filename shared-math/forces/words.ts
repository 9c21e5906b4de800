import type { FigureKind } from './figures.ts';
import type { LoadCaseId } from './load-cases.ts';
import type { StaticsFailure } from './statics.ts';

/** What a case is, in the words of the shop. */
export const CASE_WORDS: Readonly<Record<LoadCaseId, string>> = {
  parking: 'Turned at a standstill',
  box: 'Box at its most, a wheel held',
  braking: 'Braked hard, straight ahead',
};

/** What a figure below and above 0 does. */
export const WAY_WORDS: Readonly<Record<FigureKind, readonly [below: string, above: string]>> = {
  link: ['push', 'pull'],
  along: ['push', 'pull'],
  upright: ['down', 'up'],
  across: ['to the right', 'to the left'],
  moment: ['one way', 'other way'],
};

/** Why a pose has no forces: one sentence, without its full stop. */
export const NO_FORCES: Readonly<Record<StaticsFailure, string>> = {
  'no-pose': 'the linkage does not reach this pose',
  'drag-link-dead-centre':
    'the drag link stands in line with its steering arm, at a dead centre: no force in it turns the wheel',
  'tie-rod-dead-centre':
    'the tie rod stands in line with its arm, at a dead centre: no force in it turns the wheel',
  'box-dead-centre':
    'the drag link stands in line with the pitman arm, at a dead centre: the box could push it with any force',
  'axle-free': 'the links leave the axle free to move, so nothing holds these loads',
};

/** Beside every figure of forces and of what parts bear. */
export const FORCES_CAUTION =
  'Rough bounds for a qualified person: they prove no part, and no strength is certified.';

import type { Sensitivity, StepEffect } from '../../../shared-math/tune/index.ts';
import {
  decimalBeside,
  degreesBeside,
  formatDegrees,
  toDegrees,
  toRadians,
} from '../../../shared-math/units/index.ts';

/** Which way a step goes, for somebody who holds the part: "higher", "further back". */
export function stepWay({ axis, direction }: StepEffect, at: readonly number[], mirrored: boolean): string {
  if (axis === 2) return direction > 0 ? 'higher' : 'lower';
  if (axis === 0) return direction > 0 ? 'further ahead' : 'further back';
  if (!mirrored) return direction > 0 ? 'further left' : 'further right';
  return direction * Math.sign(at[1] ?? 1) >= 0 ? 'further out' : 'further in';
}

/** What something changes by: "0.9° less", "no change". `asWords` writes a figure without sign. */
export function changeWords(change: number, asWords: (value: number) => string): string {
  const figure = asWords(Math.abs(change));
  if (figure === asWords(0)) return 'no change';
  return `${figure} ${change < 0 ? 'less' : 'more'}`;
}

/** Bump steer's change, finer where it is small. */
export function bumpChange(change: number): string {
  const degrees = toDegrees(change);
  return changeWords(degrees, (value) => formatDegrees(value, Math.abs(degrees) < 0.095 ? 2 : 1));
}

/** rad by which a step changes the worst bump steer; undefined if the step leads out of reach. */
export function bumpOf({ drawn }: Sensitivity, { figures }: StepEffect): number | undefined {
  return figures && figures.worstBumpSteer - drawn.worstBumpSteer;
}

/** rad. A change that no figure shows is none. */
const LEAST_REPORTED = toRadians(0.005);

/** The steps that make bump steer less, one for each axis that has one, the most telling first. */
export function betterSteps(asWords: Sensitivity): { readonly effect: StepEffect; readonly bump: number }[] {
  const best = ([0, 1, 2] as const).flatMap((axis) => {
    const both = asWords.effects
      .filter((effect) => effect.axis === axis)
      .flatMap((effect) => {
        const bump = bumpOf(asWords, effect);
        return bump === undefined ? [] : [{ effect, bump }];
      })
      .sort((a, b) => a.bump - b.bump);
    return both.slice(0, 1).filter(({ bump }) => bump <= -LEAST_REPORTED);
  });
  return best.sort((a, b) => a.bump - b.bump);
}

/** What else a step changes, for the table: toe as a length, ratio, least gap. */
export interface StepRow {
  readonly way: string;
  readonly bump: string;
  readonly toe: string;
  readonly ratio: string;
  readonly gap: string;
}

export function stepRow(
  asWords: Sensitivity,
  effect: StepEffect,
  way: string,
  toeLength: (angle: number) => number,
  toe: (mm: number) => string,
  length: (mm: number) => string,
): StepRow {
  const { drawn } = asWords;
  const { figures } = effect;
  const out = 'out of reach';
  if (!figures) return { way, bump: out, toe: '', ratio: '', gap: '' };
  const between = (
    before: number | undefined,
    after: number | undefined,
    write: (value: number) => string,
  ): string => (before === undefined || after === undefined ? '–' : signed(after - before, write));
  return {
    way,
    bump: signed(toDegrees(figures.worstBumpSteer - drawn.worstBumpSteer), (value) =>
      degreesBeside(value, [0], 2),
    ),
    toe: between(toeLength(drawn.toeChange), toeLength(figures.toeChange), toe),
    ratio: between(drawn.ratio && Math.abs(drawn.ratio), figures.ratio && Math.abs(figures.ratio), (value) =>
      decimalBeside(value, [0], 2),
    ),
    gap: between(drawn.clearance, figures.clearance, length),
  };
}

function signed(change: number, write: (value: number) => string): string {
  const figure = write(Math.abs(change));
  return figure === write(0) ? '0' : `${change < 0 ? '−' : '+'}${figure}`;
}

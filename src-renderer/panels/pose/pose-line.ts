import { brakingWords } from '../../document/braked-car.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';

/** A figure with the sign that its slider shows. */
const signed = (value: number, words: string) => (value > 0 ? `+${words}` : words);

/** Which way a value goes, with a space before it; empty at 0. */
export const way = (value: number, positive: string, negative: string) =>
  value === 0 ? '' : ` ${value > 0 ? positive : negative}`;

/** The pose's figures as the sliders show them. */
export function poseFigures(openLayout: Pick<OpenLayout, 'carPose' | 'length' | 'degrees'>) {
  const { heave, roll, handwheel, braking } = openLayout.carPose.pose;
  return {
    heave: signed(heave, openLayout.length(heave)),
    roll: signed(roll, openLayout.degrees(roll, roll === 0 ? 0 : 1)),
    handwheel: `${openLayout.degrees(Math.abs(handwheel), 0)}${way(handwheel, 'left', 'right')}`,
    braking: braking === 0 ? 'off' : brakingWords(braking),
  };
}

/** The sliders in one line, for where they are folded, and why the car does not stand where it was meant to. */
export function poseLine(openLayout: Pick<OpenLayout, 'carPose' | 'length' | 'degrees'>): string {
  const { heave, roll, handwheel, braking } = poseFigures(openLayout);
  const figures = `Heave ${heave} · Roll ${roll} · Handwheel ${handwheel} · Braking ${braking}`;
  return [figures, openLayout.carPose.sentence].filter(Boolean).join(' · ');
}

import type { WhyNone } from './proposal.ts';

/**
 * What has to give where nothing fits: "Any one of these would have to give: the sump as high as it is; bump steer, at most
 * 0.5°." Empty where nothing that was tried frees anything, or one thing alone has to give, which the sentence names.
 */
export function givingWords({ excluding, single }: Pick<WhyNone, 'excluding' | 'single'>): string {
  if (excluding.length < 2) return '';
  const who = single
    ? 'Any one of these would have to give'
    : excluding.length === 2
      ? 'These two would have to give together'
      : 'More than one of these would have to give';
  return `${who}: ${excluding.join('; ')}.`;
}

/** Where there was no idea to look through. */
export const NONE_LEFT = 'What is kept as drawn, and the room that is given, leave no arrangement to try.';

import { describe, test } from 'vitest';
import { ALL_COMBINATIONS, COMBINATIONS } from '../support/layouts.ts';
import { expectRegistryPose } from '../support/registry-pose.ts';

const QUICK = new Set(COMBINATIONS.map(({ label }) => label));

describe('the pose is the least-squares pose of the raw equations', () => {
  test.each(ALL_COMBINATIONS.filter(({ label }) => !QUICK.has(label)))('$label', expectRegistryPose);

  // A rocker on the frame and springs that slide are ways of the same kinds.
  test.each(
    ALL_COMBINATIONS.flatMap(({ label, over }) => {
      const { location, lateral } = over as { location: object; lateral: object };
      return [
        ...(label.includes('watt')
          ? [
              {
                label: `${label}, rocker on the frame`,
                over: { ...over, lateral: { ...lateral, rockerOn: 'frame' } },
              },
            ]
          : []),
        ...(label.includes('quarter')
          ? [{ label: `${label}, sliding`, over: { ...over, location: { ...location, eyes: 'sliding' } } }]
          : []),
      ];
    }),
  )('$label', expectRegistryPose);
});

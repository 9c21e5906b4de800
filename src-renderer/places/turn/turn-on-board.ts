import { limitInForce } from '../../../shared-math/findings/index.ts';
import type { Contribution } from '../../board/contributor.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { turnPicture } from './turn-marks.ts';

/** What the turn says on the board while its curves stand below. */
export const turnOnBoard = (openLayout: OpenLayout, open: () => boolean) => (): Contribution => ({
  id: 'turn',
  overlay: ({ shown, onBoard }) =>
    open()
      ? turnPicture({
          frontEnd: openLayout.frontEnd,
          state: openLayout.carPose.state,
          shown,
          transmissionLeast: limitInForce('transmissionLeast', openLayout.settings.limits).value,
          onBoard,
        })
      : {},
});

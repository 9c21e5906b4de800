import { limitInForce } from '../../../shared-math/findings/index.ts';
import type { Contribution } from '../../board/contributor.ts';
import type { Workbench } from '../../document/workbench.svelte.ts';
import { turnPicture } from './turn-marks.ts';

/** What the turn says on the board while its curves stand below. */
export const turnOnBoard = (workbench: Workbench) => (): Contribution => ({
  id: 'turn',
  overlay: ({ shown, onBoard }) =>
    workbench.lookedAt === 'turn'
      ? turnPicture({
          frontEnd: workbench.frontEnd,
          state: workbench.poseState,
          shown,
          transmissionLeast: limitInForce('transmissionLeast', workbench.settings.limits).value,
          onBoard,
        })
      : {},
});

import type { Contribution } from '../../board/contributor.ts';
import type { Workbench } from '../../document/workbench.svelte.ts';
import { shaftPicture } from './shaft-marks.ts';

/** The steering shaft's joints and angles on the board, in every place. */
export const shaftOnBoard = (workbench: Workbench) => (): Contribution => ({
  id: 'shaft',
  overlay: (source) => shaftPicture({ ...source, route: workbench.route }),
});

import type { View } from '../../../shared-math/drawing/index.ts';
import type { FrontEnd } from '../../../shared-math/linkage/index.ts';
import type { Contribution } from '../../board/contributor.ts';
import type { Note } from '../../board/overlay-picture.ts';
import { type OnBoard, proposedAt } from '../../board/proposed-note.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { solvePose } from '../../document/reach.ts';
import { shaftPicture } from './shaft-marks.ts';
import type { ShaftPlace } from './shaft-place.svelte.ts';

/** The name of a shaft that is looked at, at the joint in its middle. */
function triedNotes(tried: FrontEnd | undefined, shown: readonly View[], onBoard: OnBoard): Note[] {
  const joints = tried?.layout.shaft?.joints ?? [];
  return proposedAt(joints[Math.floor(joints.length / 2)]?.centre, shown, onBoard);
}

/** The steering shaft's joints and angles on the board, in every place, and the shaft that is looked at before it is taken. */
export const shaftOnBoard = (openLayout: OpenLayout, place: ShaftPlace) => (): Contribution => ({
  id: 'shaft',
  overlay: (source) => ({
    ...shaftPicture({ ...source, route: openLayout.route }),
    firstNotes: triedNotes(place.onBoard, source.shown, source.onBoard),
  }),
  proposed: () =>
    place.onBoard && {
      frontEnd: place.onBoard,
      state: solvePose(place.onBoard, openLayout.carPose.pose),
      links: false,
    },
});

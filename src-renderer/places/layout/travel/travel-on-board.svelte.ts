import { ballPath, linkArc } from '../../../../shared-math/aim/index.ts';
import type { Contribution, CurveInSpace } from '../../../board/contributor.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import { arcMarks, arcNotes } from './arc-marks.ts';
import { arcsOf, gapOf } from './arcs.ts';

/** What the travel says on the board while it is shown: the two arcs, the gap between them, the aim. */
export const travelOnBoard = (openLayout: OpenLayout, shown: () => boolean) => (): Contribution => {
  const arcs = $derived.by(() => arcsOf(openLayout.held, openLayout.aim));
  const gap = $derived.by(() => gapOf(openLayout.frontEnd, arcs, openLayout.carPose.pose.heave));
  const inSpace = $derived.by((): readonly CurveInSpace[] => {
    const { frontEnd, held } = openLayout;
    const paths = [
      { kind: 'asked', path: ballPath(frontEnd, undefined, held) },
      { kind: 'allowed', path: linkArc(frontEnd, undefined, held) },
    ] as const;
    return paths.flatMap(({ kind, path }) => (path.status === 'ok' ? [{ kind, points: path.points }] : []));
  });
  return {
    id: 'travel',
    curvesInSpace: () => (shown() ? inSpace : []),
    overlay: (board) => {
      if (!shown()) return {};
      const source = { ...board, arcs, gap };
      return { ...arcMarks(source), notes: arcNotes(source) };
    },
  };
};

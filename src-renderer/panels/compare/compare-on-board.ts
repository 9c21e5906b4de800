import { project, type View } from '../../../shared-math/drawing/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { carryPoint } from '../../../shared-math/linkage/index.ts';
import type { BoardView } from '../../board/board-view.svelte.ts';
import type { Contribution } from '../../board/contributor.ts';
import { LEVEL } from '../../document/frame-pose.ts';
import { COMPARE_DASHES } from '../../look/compare.ts';
import type { Comparison } from './comparison.svelte.ts';

/** Seen from above, side steer and cross steer both show where they run. */
const namingView = (shown: readonly View[]): View => (shown.includes('top') ? 'top' : (shown[0] ?? 'side'));

/** Letters of a variant's name on the board. */
const NAME_MOST = 30;

/** The other variants on the board by letter and name, and where their pitman balls stand in a view. */
function otherNames(comparison: Comparison, view: View) {
  const at = new Float64Array(3);
  return (comparison.ghosts ? comparison.others : [])
    .filter(({ state }) => state.status === 'ok')
    .map(({ id, letter, frontEnd, state }) => {
      carryPoint(frontEnd, state, 'pitman', frontEnd.layout.steering.box.pitmanBall, at);
      const name = comparison.nameOf(id);
      const short = name.length > NAME_MOST ? `${name.slice(0, NAME_MOST - 1).trimEnd()}…` : name;
      const ball: Point = [at[0] as number, at[1] as number, at[2] as number];
      return { view, at: project(view, ball), name: `${letter} ${short}` };
    });
}

/** The variants beside the open one, in its pose, each named beside its pitman ball. */
export const compareOnBoard =
  (comparison: Comparison) =>
  (board: BoardView): Contribution => ({
    id: 'compare',
    otherCars: () =>
      comparison.ghosts
        ? comparison.others.map(({ id, frontEnd, state, letter }) => ({
            id,
            frontEnd,
            state,
            dash: COMPARE_DASHES[letter],
            framePose: LEVEL,
            whole: false,
          }))
        : undefined,
    overlay: ({ shown, onBoard }) => ({
      notes: otherNames(comparison, namingView(shown)).map(({ view, at, name }) => {
        const [x, y] = onBoard(view, at);
        return {
          id: `other ${name}`,
          view,
          x,
          y,
          clear: 7,
          toward: 40,
          lines: [{ text: name, ink: 'soft' as const, strong: true }],
        };
      }),
    }),
    spots: {
      variant: (letter: string) =>
        otherNames(comparison, namingView(board.shown)).find(({ name }) => name.startsWith(`${letter} `)),
    },
  });

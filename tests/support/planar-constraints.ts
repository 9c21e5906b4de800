import { make_gcs_wrapper } from '@salusoft89/planegcs';

const solver = make_gcs_wrapper();

/**
 * The rocker angle (rad) of a planar four-bar by a constraint solver: fixed pivots and crank end, two lengths to hold,
 * the rocker's end started at a guess. Knows no trigonometry of ours.
 */
export async function planarRocker(
  a: number,
  b: number,
  c: number,
  d: number,
  crank: number,
  guess: number,
): Promise<number> {
  const gcs = await solver;
  gcs.clear_data();
  gcs.push_primitives_and_params([
    { id: 'A', type: 'point', x: a * Math.cos(crank), y: a * Math.sin(crank), fixed: true },
    { id: 'O', type: 'point', x: d, y: 0, fixed: true },
    { id: 'B', type: 'point', x: d + c * Math.cos(guess), y: c * Math.sin(guess), fixed: false },
    { id: 'coupler', type: 'p2p_distance', p1_id: 'A', p2_id: 'B', distance: b },
    { id: 'rocker', type: 'p2p_distance', p1_id: 'O', p2_id: 'B', distance: c },
  ]);
  gcs.solve();
  gcs.apply_solution();
  const end = gcs.sketch_index.get_sketch_point('B');
  return Math.atan2(end.y, end.x - d);
}

import type { Layout } from '../layout/index.ts';

/**
 * Side steer or cross steer, by the way the drag link runs: along the car, or over to the far wheel. The view in
 * which its arc is judged is the side view for the one and the front view for the other.
 */
export function arrangementOf(layout: Layout): 'side' | 'cross' {
  const { dragLinkBall, box } = layout.steering;
  const along = Math.abs(dragLinkBall[0] - box.pitmanBall[0]);
  const across = Math.abs(dragLinkBall[1] - box.pitmanBall[1]);
  return along >= across ? 'side' : 'cross';
}

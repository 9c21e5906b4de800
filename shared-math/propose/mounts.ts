import type { Layout } from '../layout/index.ts';
import { arrangementOf } from '../linkage/index.ts';
import type { Idea, Mount } from './idea.ts';
import { railFacesNear } from './rail-faces.ts';
import { boxLine, crossmemberGap } from './room.ts';
import { PLATE } from './sizes.ts';

// Where on the frame a box is bolted, as far as a laid or drawn layout shows it.

/** mm from a crossmember within which a box inside the rails is taken as bolted to it, where that is nearer than the rail. */
const ON_CROSSMEMBER = PLATE.most;

/** Where the drawn box is bolted, of a car with its driver on the left. Without rails, by the assumed ones. */
export function mountOf(layout: Layout): Mount {
  const { from, to, radius } = boxLine(layout);
  const middle = (from[1] + to[1]) / 2;
  const { outer, inner, top } = railFacesNear(layout, from[0]);
  if (Math.min(from[2], to[2]) - radius / 2 > top && middle > inner - radius && middle < outer + radius)
    return 'top';
  if (middle > (outer + inner) / 2) return 'outside';
  if (arrangementOf(layout) === 'side' && layout.steering.box.pitmanBall[1] > outer) return 'through';
  return crossmemberGap(layout) < Math.min(ON_CROSSMEMBER, railGap(layout)) ? 'crossmember' : 'inside';
}

/** mm from a box inside the rails to the left one. */
function railGap(layout: Layout): number {
  const { from, to, radius } = boxLine(layout);
  return railFacesNear(layout, from[0]).inner - Math.max(from[1], to[1]) - radius;
}

/** Whether the drawn pitman arm stands up from its sector shaft; in cross steer, whether it lies over its box. */
export function armOf({ steering }: Layout): Idea['arm'] {
  return steering.box.sectorCentre[2] < steering.box.pitmanBall[2] ? 'up' : 'down';
}

/** Whether the drawn box is ahead of the axle. */
export function isAhead({ axle, steering }: Layout): boolean {
  return steering.box.sectorCentre[0] > axle[steering.dragLinkTo].kingpinBottom[0];
}

/** rad that the drawn sector shaft of a side steer box is turned in plan, counter-clockwise from above; 0 lies square across the car. */
export function planTurnOf({ steering }: Layout): number {
  const [x, y] = steering.box.sectorAxis;
  return y === 0 ? 0 : Math.atan(-x / y);
}

/** rad that the upper end of the drawn sector shaft of a cross steer box leans back from upright. */
export function sectorTiltOf({ steering }: Layout): number {
  const [x, , z] = steering.box.sectorAxis;
  return z === 0 ? 0 : Math.atan(x / z);
}

/** mm that a laid box misses the place which its idea names; 0 where it is there, or the idea names none in reach of which it is laid. */
export function mountLacks({ mount }: Pick<Idea, 'mount'>, layout: Layout): number {
  if (mount === 'crossmember') {
    // Where a rail is nearer it would be bolted to that.
    const gap = crossmemberGap(layout);
    return Math.max(0, gap - PLATE.most, gap - railGap(layout));
  }
  if (mount !== 'top') return 0;
  const { from, to, radius } = boxLine(layout);
  const { top } = railFacesNear(layout, layout.steering.box.sectorCentre[0]);
  const gap = Math.min(from[2], to[2]) - radius - top;
  return Math.max(0, PLATE.least - gap, gap - PLATE.most);
}

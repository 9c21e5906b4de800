import {
  aimAtPlane,
  findAim,
  findBestSpot,
  holdTravel,
  judgedPlane,
  worstBumpSteerAt,
  zeroSlopeLine,
} from '../../shared-math/aim/index.ts';
import { resolveLayout } from '../../shared-math/layout/index.ts';
import { arrangementOf, prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { worstOneWheel } from '../../shared-math/sweep/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { onlyFile, takeArguments } from './arguments.ts';
import { readLayoutFile } from './layout-file.ts';
import type { Answer, Command } from './usage.ts';

/** An angle in degrees, or null where there is none to tell: the linkage does not reach over the travel. */
function degreesOrNull(angle: number): number | null {
  return Number.isFinite(angle) ? toDegrees(angle) : null;
}

function* answer(file: string): Answer {
  const layout = resolveLayout(readLayoutFile(file));
  const frontEnd = prepareFrontEnd(layout);
  const travel = holdTravel(frontEnd);
  const found = findAim(frontEnd, travel);
  const head = { format: 'toeboard-aim', version: 1, layout: layout.name };
  if (!found.ok) {
    yield `${JSON.stringify({ ...head, status: found.failure })}\n`;
    return;
  }
  const aim = found.value;
  const { kept } = judgedPlane(frontEnd);
  const drawn = layout.steering.box.pitmanBall;
  const inPlane = aimAtPlane(aim, kept, drawn[kept]) ?? null;
  const best = findBestSpot(frontEnd, aim, travel);
  const line = zeroSlopeLine(frontEnd);
  const oneWheel = worstOneWheel(frontEnd);
  const reported = {
    ...head,
    status: 'ok',
    arrangement: arrangementOf(layout),
    aimPoint: aim.point,
    aimAxis: aim.axis,
    radius: aim.radius,
    flatness: aim.flatness,
    zeroSlopeLine: line
      ? {
          plane: { [line.plane.axis === 1 ? 'y' : 'x']: line.plane.at },
          view: line.plane.axis === 1 ? 'side' : 'front',
          through: line.through,
          direction: line.direction,
        }
      : null,
    pitmanBall: { drawn, atAim: inPlane, bestSpot: best?.point ?? null },
    worstBumpSteer: {
      drawn: degreesOrNull(worstBumpSteerAt(travel, drawn)),
      atAim: inPlane ? degreesOrNull(worstBumpSteerAt(travel, inPlane)) : null,
      bestSpot: best ? toDegrees(best.worstBumpSteer) : null,
      oneWheel: oneWheel.status === 'ok' ? toDegrees(oneWheel.worst) : null,
    },
  };
  yield `${JSON.stringify(reported, null, 2)}\n`;
}

export const aim: Command = {
  name: 'aim',
  usage: 'aim LAYOUT.json',
  about: 'The best place for the frame end of the drag link: aim point and axis, zero-slope line, best spot.',
  run: (args) => answer(onlyFile(takeArguments(args, { values: [], flags: [] }))),
};

import { jointOfPoint, type ShaftDocument } from '../../../shared-math/layout/index.ts';
import type { ApparentAngles, Route } from '../../../shared-math/shaft/index.ts';
import { formatDegrees, toDegrees } from '../../../shared-math/units/index.ts';

const degrees = (radians: number) => formatDegrees(toDegrees(radians), 1);

/** "14.0° of 30°", with the joint's kind: the true angle in space. */
export function jointAngleWords(route: Route, joint: number): string {
  const { kind, angle, limit } = route.joints[joint] as Route['joints'][number];
  return `${degrees(angle)} of ${formatDegrees(toDegrees(limit), 0)}, ${kind} joint`;
}

const VIEW_WORDS: readonly [view: keyof ApparentAngles, words: string][] = [
  ['side', 'side'],
  ['top', 'top'],
  ['front', 'front'],
];

/** What a protractor reads in each view: "side 11.0°, top 8.4°, front 3.1°"; a view along a shaft shows none. */
export function apparentWords(apparent: ApparentAngles): string {
  return VIEW_WORDS.map(([view, words]) => {
    const angle = apparent[view];
    return `${words} ${angle === undefined ? 'end-on' : degrees(angle)}`;
  }).join(', ');
}

/** What goes along with a point of the shaft or with the box, or how a joint may move; empty where nothing is to be said. */
export function bondWords(id: string, shaft: ShaftDocument): string {
  const last = shaft.joints.length;
  if (id === 'steering.box.sectorCentre')
    return last > 1
      ? `The shaft’s box end and joint ${last} are bolted to it and go along.`
      : 'The shaft’s box end is bolted to it and goes along.';
  if (id === 'shaft.column.end') return 'Joint 1 sits on it and goes along.';
  if (id === 'shaft.box.end')
    return last > 1 ? `Joint ${last} sits on it and goes along.` : 'The joint stays on the column.';
  const joint = jointOfPoint(id);
  if (joint === 0) return 'Slides along the column’s axis.';
  if (joint === last - 1) return 'Slides along the axis of the box’s input.';
  return '';
}

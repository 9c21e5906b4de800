import { capitalised } from '../capitalised.ts';
import type { Point } from '../geometry/points.ts';
import { broughtByWheel } from './axle-group.ts';
import type { Carrier, Hardpoint } from './hardpoint.ts';
import { lateralPoints } from './lateral-kinds.ts';
import { LOCATION_FACTS } from './location-kinds.ts';
import { resolveLayout } from './resolve.ts';
import type { LayoutDocument } from './schema.ts';
import { shaftPoints, shaftPointsOnBox } from './shaft-points.ts';
import type { Side } from './sides.ts';
import { valueAt } from './values.ts';

interface Entry {
  readonly path: string;
  readonly name: string;
  readonly carrier: Carrier | 'axle' | 'spindle';
  /** One of a left and a right, and which part of the document says whether the right is the mirror image. */
  readonly sided?: 'axle' | 'location';
}

const AXLE: readonly Entry[] = [
  { path: 'kingpinTop', name: 'kingpin, top', carrier: 'axle', sided: 'axle' },
  { path: 'kingpinBottom', name: 'kingpin, bottom', carrier: 'axle', sided: 'axle' },
  { path: 'wheelCentre', name: 'wheel centre', carrier: 'spindle', sided: 'axle' },
  { path: 'tieRodBall', name: 'tie rod ball', carrier: 'spindle', sided: 'axle' },
];

const SIDE_NAME: Record<Side, string> = { left: 'Left', right: 'Right' };

/**
 * All hardpoints of a document, with mirrored sides spelled out, in the order of the car: axle, location,
 * lateral, steering, shaft. Positions are those of ride height, mm, vehicle axes.
 */
export function hardpoints(document: LayoutDocument): Hardpoint[] {
  const layout = resolveLayout(document);
  const points: Hardpoint[] = [];

  const addSided = (root: 'axle' | 'location', entries: readonly Entry[]) => {
    const mirroring = 'right' in document[root] && document[root].right === 'mirror';
    for (const entry of entries)
      for (const side of entry.sided ? (['left', 'right'] as const) : [undefined]) {
        const id = side ? `${root}.${side}.${entry.path}` : `${root}.${entry.path}`;
        const carrier =
          entry.carrier === 'axle' || entry.carrier === 'spindle'
            ? (`${entry.carrier}-${side ?? 'left'}` as Carrier)
            : entry.carrier;
        const other = side === 'left' ? 'right' : 'left';
        points.push({
          id,
          name: side ? `${SIDE_NAME[side]} ${entry.name}` : capitalised(entry.name),
          carrier,
          at: valueAt(layout, id) as Point,
          ...(side && mirroring ? { twin: `${root}.${other}.${entry.path}` } : {}),
          ...(side && entry.path === 'wheelCentre' ? { brings: broughtByWheel(document, side) } : {}),
        });
      }
  };

  addSided('axle', AXLE);
  addSided('location', LOCATION_FACTS[document.location.kind].points);

  points.push(...lateralPoints(layout.lateral));

  const { steering } = layout;
  points.push(
    {
      id: 'steering.dragLinkBall',
      name: 'Steering arm ball',
      carrier: `spindle-${steering.dragLinkTo}`,
      at: steering.dragLinkBall,
    },
    { id: 'steering.box.pitmanBall', name: 'Pitman ball', carrier: 'pitman', at: steering.box.pitmanBall },
    {
      id: 'steering.box.sectorCentre',
      name: 'Steering box',
      carrier: 'frame',
      at: steering.box.sectorCentre,
      brings: ['steering.box.pitmanBall', ...shaftPointsOnBox(layout.shaft)],
    },
  );
  if (layout.shaft) points.push(...shaftPoints(layout.shaft));
  return points;
}

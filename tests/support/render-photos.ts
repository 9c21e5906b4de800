import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Point } from '../../shared-math/geometry/points.ts';
import { documentText, hardpoints, type Photo } from '../../shared-math/layout/index.ts';
import { PHOTOGRAPHED, photographedCar, SHOTS, type Shot } from './photo-scene.ts';
import { photographed } from './pinhole.ts';
import { renderedPhoto } from './rendered-photo.ts';

// Renders the invented photos of projects/photos and tells the photographed layout how they are put to scale. Run it with Node 24 after the scene was changed:
//     npm exec -- node tests/support/render-photos.ts

/** A photo as somebody with a steady hand would have put it to scale: to the tenth of a pixel. */
function told(shot: Shot, content: Buffer): Photo {
  const spot = (point: Point) => {
    const [x, y] = photographed(shot.camera, point);
    return [Math.round(10 * x) / 10, Math.round(10 * y) / 10] as const;
  };
  const points = hardpoints(photographedCar());
  const anchor = points.find(({ id }) => id === 'axle.left.wheelCentre');
  if (!anchor) throw new Error('every car has a left wheel');
  const places = [
    [0, 0],
    [shot.width, 0],
    [shot.width, shot.height],
    [0, shot.height],
  ] as const;
  const [from, to] = shot.edge;
  const along = (share: number): Point => [
    from[0] + (to[0] - from[0]) * share,
    from[1] + (to[1] - from[1]) * share,
    from[2] + (to[2] - from[2]) * share,
  ];
  return {
    view: shot.view,
    hash: createHash('sha256').update(content).digest('hex'),
    name: shot.file,
    size: shot.camera.size,
    opacity: 0.8,
    shown: false,
    lens: { line: [0.02, 0.25, 0.5, 0.75, 0.98].map((share) => spot(along(share))) },
    straighten: { points: shot.frame.map((at, i) => ({ at: spot(at), place: places[i] ?? [0, 0] })) },
    anchor: { at: spot(anchor.at), point: anchor.id, stands: anchor.at },
    depth: shot.depth,
    distance: shot.distance,
    marks: points
      .filter(({ id }) => !id.includes('.right.'))
      .map(({ id, at }) => ({ point: id, at: spot(at) })),
    notes: [],
    lengths: [],
  };
}

const photos = SHOTS.map((shot) => {
  const content = renderedPhoto(shot);
  writeFileSync(join(import.meta.dirname, '../../projects/photos', shot.file), content);
  return told(shot, content);
});
writeFileSync(PHOTOGRAPHED, documentText({ ...photographedCar(), photos }));

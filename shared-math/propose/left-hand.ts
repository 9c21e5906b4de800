import { mirrored, type Point } from '../geometry/points.ts';
import { inTheMirror, type LayoutDocument, type Obstacle, type Rail } from '../layout/index.ts';

// Proposals are laid on cars of one hand, the driver on the left; a car of the other hand is laid in the mirror, and its
// proposals are mirrored back: so that mirrored cars get mirrored proposals to the last digit.

/** One of a pair is the same pair under either name: the one on the left speaks for it. */
const onTheLeft = (path: readonly Point[]): readonly Point[] => {
  const first = path.find((point) => point[1] !== 0);
  return first && first[1] < 0 ? path.map(mirrored) : path;
};

function railOver(rail: Rail): Rail {
  const path = rail.path.map(mirrored);
  return { ...rail, path: rail.mirrored ? [...onTheLeft(path)] : path };
}

function obstacleOver(obstacle: Obstacle): Obstacle {
  if (obstacle.kind === 'box') {
    const centre = mirrored(obstacle.centre);
    const back = obstacle.mirrored && centre[1] < 0;
    const turned = obstacle.turn === undefined ? {} : { turn: back ? obstacle.turn : 0 - obstacle.turn };
    return { ...obstacle, centre: back ? mirrored(centre) : centre, ...turned };
  }
  const [from, to] = [mirrored(obstacle.from), mirrored(obstacle.to)];
  if (!obstacle.mirrored) return { ...obstacle, from, to };
  const [a, b] = onTheLeft([from, to]) as [Point, Point];
  return { ...obstacle, from: a, to: b };
}

/** The whole car in the mirror: front end, rails and obstacles. A mirrored pair is described by its left one. */
export function carInTheMirror(document: LayoutDocument): LayoutDocument {
  return {
    ...inTheMirror(document),
    car: {
      ...document.car,
      ...(document.car.driverSide
        ? { driverSide: document.car.driverSide === 'left' ? 'right' : 'left' }
        : {}),
    },
    rails: document.rails.map(railOver),
    obstacles: document.obstacles.map(obstacleOver),
  };
}

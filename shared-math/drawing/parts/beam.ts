import type { Point } from '../../geometry/points.ts';
import { add, scaled, subtract } from '../../geometry/vectors.ts';
import { type Layout, SIDES } from '../../layout/index.ts';
import type { Section } from '../drawing.ts';
import type { Pen } from '../pen.ts';
import { BEND_FROM, BEND_TO, kingpin, onBeam } from './halves.ts';
import { SIZES } from './sizes.ts';

const HARDPOINTS = [
  'axle.left.kingpinTop',
  'axle.left.kingpinBottom',
  'axle.right.kingpinTop',
  'axle.right.kingpinBottom',
];

/** Shares of the half beam at which its path has a node, from the kingpin inward. The centre comes on its own. */
const NODES = [1, BEND_TO, (BEND_FROM + BEND_TO) / 2, BEND_FROM, 0.35];

/**
 * A forged I-beam. Its halves twist against each other, so the middle is drawn midway between where each half has it.
 */
function drawIBeam(pen: Pen, layout: Layout): void {
  const left = NODES.map((share) => onBeam(layout, 'left', share));
  const right = NODES.map((share) => onBeam(layout, 'right', share)).reverse();
  const centre = onBeam(layout, 'left', 0);
  const out: Point = [SIZES.beamOut, 0, 0];

  const sectionsOf = (half: number): Section[] => {
    const up: Point = [0, 0, half];
    const halfway = (point: Point) =>
      pen.blend([
        [pen.point('axle-left', point), 0.5],
        [pen.point('axle-right', point), 0.5],
      ]);
    const middle: Section = {
      centre: halfway(centre),
      up: halfway(add(centre, up)),
      out: halfway(add(centre, out)),
    };
    return [
      ...left.map((at) => pen.section('axle-left', at, up, out)),
      middle,
      ...right.map((at) => pen.section('axle-right', at, up, out)),
    ];
  };

  pen.add({
    id: 'beam',
    name: 'I-beam axle',
    role: 'axle',
    hardpoints: HARDPOINTS,
    shapes: [
      { kind: 'band', sections: sectionsOf(SIZES.beamUp), endOn: ['side'], ink: 'outline', fill: 'tint' },
      {
        kind: 'band',
        sections: sectionsOf(SIZES.beamUp - SIZES.flange),
        endOn: [],
        ink: 'fine',
        fill: 'none',
        views: ['front'],
      },
    ],
  });
}

function drawTube(pen: Pen, layout: Layout): void {
  const left = kingpin(layout, 'left').middle;
  const right = kingpin(layout, 'right').middle;
  const along = subtract(left, right);
  pen.add({
    id: 'beam',
    name: 'Tube axle',
    role: 'axle',
    hardpoints: HARDPOINTS,
    shapes: [
      {
        ...pen.hull(
          pen.disc('axle-left', left, along, SIZES.tubeBeam),
          pen.disc('axle-right', right, along, SIZES.tubeBeam),
        ),
        fill: 'tint',
      },
    ],
  });
}

/** The beam between the kingpins, and the bosses that hold them. */
export function drawBeam(pen: Pen, layout: Layout): void {
  if (layout.axle.beam === 'tube') drawTube(pen, layout);
  else drawIBeam(pen, layout);
  for (const side of SIDES) {
    const { middle, upward, length } = kingpin(layout, side);
    const carrier = `axle-${side}` as const;
    pen.add({
      id: `kingpin-${side}`,
      name: `${side === 'left' ? 'Left' : 'Right'} kingpin`,
      role: 'axle',
      side,
      hardpoints: [`axle.${side}.kingpinTop`, `axle.${side}.kingpinBottom`],
      shapes: [
        {
          ...pen.cylinder(carrier, middle, upward, -0.27 * length, 0.27 * length, SIZES.kingpinBoss),
          fill: 'tint',
        },
        pen.cylinder(carrier, middle, upward, -0.5 * length, 0.5 * length, SIZES.kingpin),
        // The axis itself, drawn on beyond both ends as centre lines are.
        {
          kind: 'line',
          points: [
            pen.point(carrier, add(middle, scaled(upward, -0.85 * length))),
            pen.point(carrier, add(middle, scaled(upward, 0.85 * length))),
          ],
          ink: 'broken',
          fill: 'none',
          views: ['side', 'front'],
        },
      ],
    });
  }
}

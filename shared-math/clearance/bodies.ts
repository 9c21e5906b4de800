import {
  alongKingpin,
  BEND_FROM,
  BEND_TO,
  kingpin,
  onBeam,
  outboardSpin,
  shareOfKingpin,
} from '../drawing/parts/halves.ts';
import { ROD_SPREAD, ROD_STATION } from '../drawing/parts/location-kinds/bracket.ts';
import { FORK_SHARE } from '../drawing/parts/location-kinds/split-rods.ts';
import { SIZES, tubeRadius, WHEEL_SHARES } from '../drawing/parts/sizes.ts';
import { mirrored, type Point } from '../geometry/points.ts';
import { add, dot, scaled, subtract, unit } from '../geometry/vectors.ts';
import { type Carrier, halvesOfSpring, type Layout, lateralBars, SIDES, type Side } from '../layout/index.ts';
import type { Body, BodyPart, Carried } from './body.ts';
import { crossmembersAt, fixedBodies, nearestRail, steeringBox, steeringShaft } from './fixed-bodies.ts';
import { RING, SEGMENT } from './shapes.ts';

const capsule = (from: Carried, to: Carried, radius: number): BodyPart => ({
  kind: SEGMENT,
  radius,
  from,
  to,
});
const ball = (at: Carried, radius: number): BodyPart => capsule(at, at, radius);
const on = (carrier: Carrier, at: Point): Carried => ({ carrier, at });

function tyre(layout: Layout, side: Side): Body {
  const { tyreRadius, tyreWidth } = layout.car;
  const { wheelCentre } = layout.axle[side];
  const carrier = `spindle-${side}` as const;
  return {
    id: `tyre-${side}`,
    name: `${side} tyre`,
    role: 'tyre',
    side,
    hardpoint: `axle.${side}.wheelCentre`,
    joins: ['beam'],
    parts: [
      {
        kind: RING,
        centre: on(carrier, wheelCentre),
        tip: on(carrier, add(wheelCentre, outboardSpin(layout, side))),
        half: tyreWidth / 2,
        outer: tyreRadius,
        inner: WHEEL_SHARES.rim * tyreRadius,
      },
    ],
  };
}

/** Shares of the half beam between which it is taken as straight. */
const BEAM_NODES = [0, BEND_FROM, BEND_TO, 1];

function beam(layout: Layout): Body {
  const parts = SIDES.flatMap((side) => {
    const carrier = `axle-${side}` as const;
    if (layout.axle.beam === 'tube') {
      const middle = scaled(add(kingpin(layout, 'left').middle, kingpin(layout, 'right').middle), 0.5);
      return [capsule(on(carrier, middle), on(carrier, kingpin(layout, side).middle), SIZES.tubeBeam)];
    }
    const at = BEAM_NODES.map((share) => on(carrier, onBeam(layout, side, share)));
    return at.slice(1).map((node, i) => capsule(at[i] as Carried, node, SIZES.beamUp));
  });
  return {
    id: 'beam',
    name: 'axle beam',
    role: 'axle',
    hardpoint: 'axle.left.kingpinBottom',
    assumed: layout.axle.beam === 'i-beam',
    joins: [],
    parts,
  };
}

/** The middle line of an arm on a spindle, from the end of the kingpin that it springs from to the ball it holds. */
function spindleArm(layout: Layout, side: Side, at: Point): BodyPart {
  const carrier = `spindle-${side}` as const;
  const share = shareOfKingpin(layout, side, at, 0, 1) < 0.5 ? 0.12 : 0.88;
  return capsule(on(carrier, alongKingpin(layout, side, share)), on(carrier, at), SIZES.armEnd);
}

/** Links and arms that the handwheel moves. */
export function steeringBodies(layout: Layout): Body[] {
  const { steering, axle, diameters } = layout;
  const { box, dragLinkBall, dragLinkTo } = steering;
  const axis = unit(box.sectorAxis);
  const along = dot(subtract(box.pitmanBall, box.sectorCentre), axis);
  const hub = add(box.sectorCentre, scaled(axis, along));
  const dragLink = [on(`spindle-${dragLinkTo}`, dragLinkBall), on('pitman', box.pitmanBall)] as const;
  const tieRod = [
    on('spindle-left', axle.left.tieRodBall),
    on('spindle-right', axle.right.tieRodBall),
  ] as const;
  const rod = (ends: readonly [Carried, Carried], radius: number): BodyPart[] => [
    capsule(ends[0], ends[1], radius),
    ball(ends[0], SIZES.ball),
    ball(ends[1], SIZES.ball),
  ];
  return [
    {
      id: 'drag-link',
      name: 'drag link',
      role: 'steering',
      hardpoint: 'steering.dragLinkBall',
      joins: ['pitman-arm', 'steering-arm'],
      parts: rod(dragLink, tubeRadius(diameters?.dragLink, SIZES.rod)),
    },
    {
      id: 'pitman-arm',
      name: 'pitman arm',
      role: 'steering',
      hardpoint: 'steering.box.pitmanBall',
      joins: ['box'],
      parts: [capsule(on('pitman', hub), on('pitman', box.pitmanBall), SIZES.armEnd)],
    },
    {
      id: 'steering-arm',
      name: 'steering arm',
      role: 'steering',
      side: dragLinkTo,
      hardpoint: 'steering.dragLinkBall',
      joins: ['beam'],
      parts: [spindleArm(layout, dragLinkTo, dragLinkBall)],
    },
    {
      id: 'tie-rod',
      name: 'tie rod',
      role: 'steering',
      hardpoint: 'axle.left.tieRodBall',
      joins: ['tie-rod-arm-left', 'tie-rod-arm-right'],
      parts: rod(tieRod, tubeRadius(diameters?.tieRod, SIZES.rod)),
    },
    ...SIDES.map(
      (side): Body => ({
        id: `tie-rod-arm-${side}`,
        name: `${side} tie rod arm`,
        role: 'steering',
        side,
        hardpoint: `axle.${side}.tieRodBall`,
        joins: ['beam'],
        parts: [spindleArm(layout, side, axle[side].tieRodBall)],
      }),
    ),
  ];
}

function lateralBodies(layout: Layout): Body[] {
  const { lateral, diameters } = layout;
  const bars = lateralBars(lateral).map(
    ({ id, name, from, to }): Body => ({
      id,
      name: name.charAt(0).toLowerCase() + name.slice(1),
      role: 'lateral',
      hardpoint: from.id,
      joins: [
        'beam',
        ...[from, to].flatMap((end) => (end.carrier === 'frame' ? nearestRail(layout, end.at) : [])),
      ],
      parts: [capsule(from, to, tubeRadius(diameters?.lateralBar, SIZES.rod))],
    }),
  );
  if (lateral.kind === 'watt') return [...bars, rocker(layout, lateral)];
  return lateral.kind === 'fixed-spring' ? [...bars, springAcross(layout, lateral)] : bars;
}

/** The rocker of a Watt's linkage: an arm each way from its bolt. */
function rocker(layout: Layout, watt: Extract<Layout['lateral'], { kind: 'watt' }>): Body {
  const arm = (to: Point) => capsule(on('rocker', watt.pivot), on('rocker', to), SIZES.armEnd);
  return {
    id: 'watt-rocker',
    name: 'rocker',
    role: 'lateral',
    hardpoint: 'lateral.pivot',
    joins: [
      'watt-upper',
      'watt-lower',
      ...(watt.rockerOn === 'axle' ? ['beam'] : nearestRail(layout, watt.pivot)),
    ],
    parts: [arm(watt.upper.rocker), arm(watt.lower.rocker)],
  };
}

/** A spring across with one eye fixed: both halves as straight leaves from the clamp to their eyes. */
function springAcross(layout: Layout, spring: Extract<Layout['lateral'], { kind: 'fixed-spring' }>): Body {
  const { fixed, shackled } = halvesOfSpring(spring);
  const half = (side: Side, clamp: Point, eye: Point) =>
    capsule(on('frame', clamp), on(`axle-${side}`, eye), SIZES.leafHalfWidth);
  return {
    id: 'transverse-spring',
    name: 'transverse spring',
    role: 'lateral',
    hardpoint: 'lateral.eye',
    assumed: true,
    joins: ['beam', ...nearestRail(layout, spring.clamp)],
    parts: [
      half(fixed, spring.clamp, spring.eye),
      half(shackled, mirrored(spring.clamp), mirrored(spring.eye)),
    ],
  };
}

/** Two thin rods from a bracket on the beam to a ball that goes with them. */
function pairOfRods(layout: Layout, side: Side, pivot: Point): BodyPart[] {
  const carrier = `axle-${side}` as const;
  const seat = onBeam(layout, side, ROD_STATION);
  return [ROD_SPREAD, -ROD_SPREAD].map((z) =>
    capsule(
      on(carrier, add(seat, [0, 0, z])),
      on(carrier, pivot),
      tubeRadius(layout.diameters?.rods, SIZES.hairpin),
    ),
  );
}

/** A fork on the beam that runs into one rod, to a ball that goes with it. */
function forkedRod(layout: Layout, side: Side, pivot: Point): BodyPart[] {
  const carrier = `axle-${side}` as const;
  const seat = onBeam(layout, side, ROD_STATION);
  const fork = on(carrier, add(seat, scaled(subtract(pivot, seat), FORK_SHARE)));
  return [
    ...[ROD_SPREAD, -ROD_SPREAD].map((z) => capsule(on(carrier, add(seat, [0, 0, z])), fork, SIZES.hairpin)),
    capsule(fork, on(carrier, pivot), tubeRadius(layout.diameters?.rods, SIZES.radiusRod)),
  ];
}

/** What holds the axle fore and aft, by kind. */
function locationBodies(layout: Layout): Body[] {
  const { location, diameters } = layout;
  switch (location.kind) {
    case 'hairpins':
      return SIDES.map((side) => ({
        id: `hairpin-${side}`,
        name: `${side} hairpin`,
        role: 'location',
        side,
        hardpoint: `location.${side}.framePivot`,
        assumed: true,
        joins: ['beam', ...nearestRail(layout, location[side].framePivot)],
        parts: pairOfRods(layout, side, location[side].framePivot),
      }));
    case 'split-rods':
      return SIDES.map((side) => ({
        id: `radius-rod-${side}`,
        name: `${side} radius rod`,
        role: 'location',
        side,
        hardpoint: `location.${side}.framePivot`,
        assumed: true,
        joins: ['beam', ...nearestRail(layout, location[side].framePivot)],
        parts: forkedRod(layout, side, location[side].framePivot),
      }));
    case 'wishbone':
      return [
        {
          id: 'wishbone',
          name: 'wishbone',
          role: 'location',
          hardpoint: 'location.framePivot',
          assumed: true,
          joins: ['beam', ...crossmembersAt(layout, location.framePivot)],
          parts: SIDES.flatMap((side) => pairOfRods(layout, side, location.framePivot)),
        },
      ];
    case 'four-bar':
      return SIDES.flatMap((side) =>
        (['upper', 'lower'] as const).map(
          (bar): Body => ({
            id: `bar-${bar}-${side}`,
            name: `${side} ${bar} bar`,
            role: 'location',
            side,
            hardpoint: `location.${side}.${bar}.axle`,
            joins: ['beam', ...nearestRail(layout, location[side][bar].frame)],
            parts: [
              capsule(
                on(`axle-${side}`, location[side][bar].axle),
                on('frame', location[side][bar].frame),
                tubeRadius(diameters?.rods, SIZES.rod),
              ),
            ],
          }),
        ),
      );
    case 'quarter-elliptic':
      return SIDES.flatMap((side): Body[] => {
        const { butt, clamp, eye, rod } = location[side];
        const rodEnd = on(location.eyes === 'sliding' ? `axle-${side}` : 'frame', rod.frame);
        return [
          {
            id: `quarter-${side}`,
            name: `${side} spring`,
            role: 'location',
            side,
            hardpoint: `location.${side}.eye`,
            assumed: true,
            joins: ['beam', ...nearestRail(layout, clamp)],
            parts: [
              capsule(on('frame', clamp), on(`axle-${side}`, eye), SIZES.leafHalfWidth),
              capsule(on('frame', butt), on('frame', clamp), SIZES.leafHalfWidth),
            ],
          },
          {
            id: `radius-rod-${side}`,
            name: `${side} radius rod`,
            role: 'location',
            side,
            hardpoint: `location.${side}.rod.axle`,
            joins: ['beam', ...nearestRail(layout, rod.frame)],
            parts: [capsule(on(`axle-${side}`, rod.axle), rodEnd, tubeRadius(diameters?.rods, SIZES.rod))],
          },
        ];
      });
    case 'parallel-leaf':
      return SIDES.map((side) => ({
        id: `leaf-${side}`,
        name: `${side} spring`,
        role: 'location',
        side,
        hardpoint: `location.${side}.seat`,
        assumed: true,
        joins: ['beam', ...nearestRail(layout, location[side].seat)],
        parts: (['fixedEye', 'shackleEye'] as const).map((end) =>
          capsule(
            on('frame', location[side][end]),
            on(`axle-${side}`, location[side].seat),
            SIZES.leafHalfWidth,
          ),
        ),
      }));
  }
}

/** Of `bodiesOf` those that are shaped by the points of the steering and the lateral bar, with the box and the shaft on it. */
export function movingBodies(layout: Layout): Body[] {
  return [...steeringBodies(layout), ...lateralBodies(layout), steeringBox(layout), ...steeringShaft(layout)];
}

/**
 * Everything of a layout that takes up room and is judged: links, rods and arms as capsules, tyres as rings on their
 * rims, the beam along the line it is drawn on, rails and obstacles as blocks, cylinders and capsules. Sizes that the
 * layout does not state are those it is drawn with, so that a gap is where the drawing shows it.
 * Frame: vehicle, at ride height. Units: mm. Needs a validated layout.
 */
export function bodiesOf(layout: Layout): Body[] {
  return [
    ...steeringBodies(layout),
    ...SIDES.map((side) => tyre(layout, side)),
    beam(layout),
    ...locationBodies(layout),
    ...lateralBodies(layout),
    ...fixedBodies(layout),
  ];
}

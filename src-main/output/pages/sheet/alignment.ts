import { createState, groundOffsets, solveFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { kingpinTrack, toeLength } from '../../../../shared-math/sweep/index.ts';
import { formatDegrees, formatToe, toDegrees } from '../../../../shared-math/units/index.ts';
import { type Block, heading } from '../../flow/block.ts';
import { facts, table } from '../../flow/table.ts';
import { angle } from '../figures.ts';
import type { SheetModel } from '../sheet-model.ts';

/** The wheels and kingpins as they are to be set, and the car's own measures. */
export function alignment(model: SheetModel): Block[] {
  const { layout, frontEnd, both, length } = model;
  const state = createState();
  const status = solveFrontEnd(frontEnd, 0, 0, 0, state);
  const { car, axle, travel } = layout;
  const rows: (readonly [string, string, string])[] = [];
  if (status === 'ok') {
    const { left, right } = state;
    rows.push(
      ['Caster', angle(left.caster), angle(right.caster)],
      ['Kingpin inclination', angle(left.kingpinInclination), angle(right.kingpinInclination)],
      ['Camber', angle(left.camber), angle(right.camber)],
      ['Toe-in', angle(left.toeIn, 2), angle(right.toeIn, 2)],
    );
  }
  const offsets = { left: groundOffsets(layout, 'left'), right: groundOffsets(layout, 'right') };
  rows.push(
    ['Scrub radius', length(offsets.left.scrubRadius), length(offsets.right.scrubRadius)],
    ['Mechanical trail', length(offsets.left.mechanicalTrail), length(offsets.right.mechanicalTrail)],
  );
  const total =
    status === 'ok'
      ? formatToe(
          toeLength(state.left.toeIn, car.tyreRadius) + toeLength(state.right.toeIn, car.tyreRadius),
          toDegrees(state.totalToeIn),
          model.style.unit,
        )
      : 'none';
  return [
    table(
      [
        { head: '', width: 2 },
        { head: 'Left', width: 1, align: 'right' },
        { head: 'Right', width: 1, align: 'right' },
      ],
      rows,
    ),
    facts([['Total toe-in, front to rear of the tyres', total]], 0.5),
    heading('The car'),
    facts(
      [
        ['Wheelbase', both(car.wheelbase)],
        ['Between wheel centres', both(axle.left.wheelCentre[1] - axle.right.wheelCentre[1])],
        ['Between kingpins', both(kingpinTrack(layout))],
        ['Tyre, radius loaded', both(car.tyreRadius)],
        ['Tyre, width', both(car.tyreWidth)],
        ['Bump', both(travel.bump)],
        ['Droop', both(travel.rebound)],
        ['Roll, each way', formatDegrees(travel.roll)],
      ],
      0.42,
    ),
  ];
}

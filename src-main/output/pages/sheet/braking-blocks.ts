import {
  BRAKING_LEFT_OUT,
  brakingCar,
  brakingChanges,
  JUDGED_GRIP,
  sweepBraking,
} from '../../../../shared-math/brake/index.ts';
import { refusalLine } from '../../../../shared-math/layout/index.ts';
import { formatDecimal, formatForce, formatMoment } from '../../../../shared-math/units/index.ts';
import { type Block, heading, paragraph } from '../../flow/block.ts';
import { table } from '../../flow/table.ts';
import { angle } from '../figures.ts';
import type { SheetModel } from '../sheet-model.ts';

// What braking does to the axle, as figures: how far it winds up, what caster and steer are left, and what that rests on.

const GRIPS_PRINTED = [0, 0.3, 0.5, 0.7, 0.9];

/** Braking over grip; a sentence alone where links hold the axle, or where its masses cannot be. */
export function brakingBlocks(model: SheetModel): Block[] {
  const { frontEnd, layout, style } = model;
  const found = brakingCar(layout);
  if (!found.ok)
    return [heading('Under braking'), paragraph(`Not worked out: ${refusalLine(found.failure)}.`)];
  const car = found.value;
  if (car.by === 'links')
    return [
      heading('Under braking'),
      paragraph('Links hold the axle: it does not wind up, and keeps its caster and its steer.'),
    ];
  const rows = sweepBraking(frontEnd, car, GRIPS_PRINTED).map((row) => [
    row.grip === 0 ? 'brakes off' : `${formatDecimal(row.grip, 1)} g`,
    formatForce(row.frontLoad, style.unit),
    formatMoment(row.moment / 1000, style.unit),
    ...(row.status === 'ok'
      ? [
          angle(Math.max(row.windUp.left, row.windUp.right), 1),
          angle(row.leftCaster, 1),
          angle(row.rightCaster, 1),
          angle(row.brakeSteer, 2),
        ]
      : ['not reached', '', '', '']),
  ]);
  const assumed = [
    ...(car.origin.frontShare === 'usual'
      ? [`${formatDecimal(100 * car.frontShare, 0)} per cent of the weight in front`]
      : []),
    ...(car.origin.gravityHeight === 'usual'
      ? [`centre of gravity ${model.length(car.gravityHeight)} up`]
      : []),
    ...(car.origin.stiffness === 'usual' ? ['springs of a usual rate'] : []),
  ];
  const helps = brakingChanges(layout).filter(({ id }) => id !== 'as-it-is');
  return [
    heading('Under braking'),
    table(
      [
        { head: 'Braked', width: 1.1 },
        { head: 'On front', width: 1, align: 'right' },
        { head: 'Twist', width: 1.1, align: 'right' },
        { head: 'Wind-up', width: 0.9, align: 'right' },
        { head: 'Caster left', width: 1, align: 'right' },
        { head: 'Caster right', width: 1, align: 'right' },
        { head: 'Steers', width: 0.9, align: 'right' },
      ],
      rows,
    ),
    ...(assumed.length > 0 ? [paragraph(`Assumed, because not given: ${assumed.join(', ')}.`)] : []),
    ...(helps.length > 0
      ? [
          paragraph(
            `Left at ${JUDGED_GRIP} g by one change alone: ${helps
              .map(
                ({ words, caster, steer }) =>
                  `${words(model.length)}, ${angle(caster)} of caster, steers ${angle(Math.abs(steer), 2)}`,
              )
              .join('; ')}.`,
          ),
        ]
      : []),
    paragraph(`Left out: ${BRAKING_LEFT_OUT.join(' ')}`),
  ];
}

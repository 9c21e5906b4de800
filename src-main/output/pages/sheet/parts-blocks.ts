import { needsOf, partsAgainstShelf } from '../../../../shared-math/shelf/index.ts';
import { type Degrees, toDegrees } from '../../../../shared-math/units/index.ts';
import { type Block, item, paragraph } from '../../flow/block.ts';
import { tickBox } from '../../pens/signs.ts';
import { BODY, BODY_BOLD, SMALL, SMALL_INK } from '../../pens/styles.ts';
import type { SheetModel } from '../sheet-model.ts';

/** The most that each ball tilts over travel and turn, rounded up to whole degrees: what an end has to allow. */
function tiltsOf({ analysis }: SheetModel): (id: string) => Degrees | undefined {
  const worst = new Map(
    (analysis.extremes?.tilts ?? []).map(({ joint, tilt }) => [joint.id, Math.ceil(toDegrees(tilt) - 1e-9)]),
  );
  return (id) => worst.get(id);
}

/** What has to be on the bench for axle and steering, the shaft's parts with it: the shelf's own list, and what of it lies there. */
export function partsBlocks(model: SheetModel): Block[] {
  const { layout, style, job } = model;
  const against = partsAgainstShelf(needsOf(layout, style, tiltsOf(model)), job.shelf ?? []);
  return [
    ...against.map(({ need, drawn, toOrder }) => {
      const taken = drawn.map(({ name, count }) => (count === 1 ? name : `${count} × ${name}`)).join(', ');
      const verb = need.wanted.kind === 'tube' ? 'cut' : 'order';
      return item(
        tickBox,
        [
          [`${need.count} × ${need.words}`, BODY],
          [taken ? `on the shelf: ${taken}` : '', BODY_BOLD],
          [taken && toOrder > 0 ? `${verb} ${toOrder}` : '', SMALL_INK],
        ],
        5,
        1.1,
      );
    }),
    paragraph(
      job.shelf
        ? 'What is on the shelf was found by dimension alone; the rest is ordered or cut by the dimensions above. Whether a part may be used is for its maker and your code to say.'
        : 'To be ordered or cut by these dimensions; no shelf was held against them.',
      SMALL,
    ),
    ...(layout.shaft
      ? []
      : [
          paragraph(
            'No steering shaft is drawn in this layout: its route, cuts and parts are not on this sheet.',
            BODY,
          ),
        ]),
  ];
}

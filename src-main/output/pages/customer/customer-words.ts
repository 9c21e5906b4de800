import { ASSISTANCE, CAUTION, tallyWords } from '../../../../shared-math/words/index.ts';
import { madeFromWords } from '../made-from.ts';
import type { SheetModel } from '../sheet-model.ts';

// What the one who drives the car is to know of its layout, in plain words: on paper and on a page that moves alike.

/** What the one who drives has to know. */
export function watchFor({ layout, style }: SheetModel): string[] {
  const early = style.unit === 'in' ? '50 miles' : '80 km';
  return [
    CAUTION,
    `Bring it back once it has run ${early}: every nut, pin and bolt of the steering is then gone over, as at each service later on (common practice, no published source).`,
    'Stop and have it looked at if the handwheel is stiff, loose or off centre, if it clicks, or if the car wanders or darts over bumps.',
    'Nobody heats, bends or welds a steering part. One that was hit, bent or has run dry is replaced.',
    ...(layout.steering.box.assist === 'power'
      ? [
          `${ASSISTANCE.line} When pump or engine stops, it takes all your strength at once: try it standing, before you need it.`,
        ]
      : []),
    'Wheels, tyres or springs of another size change all of this: have it measured anew.',
  ];
}

/** How the layout stands against the shop's limits, and what it was made from. */
export function stateWords(model: SheetModel): string {
  const counts = { stop: 0, attention: 0, info: 0 };
  for (const { severity } of model.findings) counts[severity] += 1;
  const settled = counts.stop + counts.attention === 0;
  const state =
    counts.stop > 0
      ? 'This layout still has faults that must be fixed: as drawn, it is not fit for the road.'
      : counts.attention > 0
        ? 'Ask the shop about the points it has checked and accepted in this layout.'
        : 'Nothing in this layout is past the limits that the shop works to. That is not an approval.';
  return `${settled ? state : `${tallyWords(counts)}. ${state}`} ${madeFromWords(model)}`;
}

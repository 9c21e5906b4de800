import { formatDegrees } from '../../../../shared-math/units/index.ts';
import { ASSIST_WORDS, wordsOf } from '../../../../shared-math/words/index.ts';
import { type Block, heading, item, paragraph } from '../../flow/block.ts';
import { tickBox } from '../../pens/signs.ts';
import { BODY, SMALL } from '../../pens/styles.ts';
import { armList, type Length, linkList } from '../links.ts';
import type { SheetModel } from '../sheet-model.ts';
import { springLines } from './spring-parts.ts';

/** What each link wants at its two ends, or where its length is taken. */
function endsOf({ name, between }: Length): string {
  if (/^(Drag link|Tie rod)$/.test(name)) return ', two ball ends';
  if (/^(Upper|Lower) bar/.test(name)) return ', two ends each';
  if (/^Lateral bar/.test(name)) return ', two bushed ends';
  if (/^(Hairpin|Radius rod|Wishbone)/.test(name)) return `, ${between}`;
  return '';
}

/** How many of it a line of a list stands for, and its name without that. */
function counted(name: string): readonly [count: number, name: string] {
  return name.endsWith(', each side') ? [2, name.slice(0, -', each side'.length)] : [1, name];
}

/** What has to be on the bench for axle and steering; the shaft's own parts stand with the shaft. */
export function partsBlocks(model: SheetModel): Block[] {
  const { layout, both } = model;
  const { box } = layout.steering;
  const lines = [
    `1 × Steering box, ${wordsOf(ASSIST_WORDS, box.assist)}, ${box.ratio} to 1, ${formatDegrees(box.sectorTravel, 0)} of sector each way`,
    ...[...armList(layout), ...linkList(layout)]
      .filter(({ name }) => !/^(Leaf|Transverse) spring/.test(name))
      .map((part) => {
        const [count, plain] = counted(part.name);
        return `${count} × ${plain}, ${both(part.length)}${endsOf(part)}`;
      }),
    ...springLines(model),
  ];
  return [
    heading('Parts'),
    ...lines.map((line) => item(tickBox, [[line, BODY]], 5, 0.9)),
    paragraph(
      layout.shaft
        ? 'The steering shaft’s parts stand with it.'
        : 'No steering shaft is drawn in this layout: its route, cuts and parts are not on this sheet.',
      layout.shaft ? SMALL : BODY,
    ),
  ];
}

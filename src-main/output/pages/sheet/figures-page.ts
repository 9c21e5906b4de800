import { heading } from '../../flow/block.ts';
import { Flow } from '../../flow/flow.ts';
import type { Leaves } from '../../flow/leaves.ts';
import type { Matter } from '../matter.ts';
import { alignment } from './alignment.ts';
import { boxBlocks, linkBlocks, threadBlocks } from './links-blocks.ts';
import { partsBlocks } from './parts-blocks.ts';

/** Links, arms and box; alignment and the car's measures. */
export function figuresPage(leaves: Leaves, matter: Matter): void {
  const flow = new Flow(
    leaves,
    { title: 'Links, box and alignment', lying: true },
    3,
    'Centre to centre, at ride height, wheels straight ahead',
  );
  flow.put(...linkBlocks(matter), ...partsBlocks(matter));
  flow.nextColumn();
  flow.put(...boxBlocks(matter), ...threadBlocks(matter));
  flow.nextColumn();
  flow.put(heading('Alignment at ride height'), ...alignment(matter));
}

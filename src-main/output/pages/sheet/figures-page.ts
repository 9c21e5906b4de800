import { heading } from '../../flow/block.ts';
import { Flow } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import type { SheetModel } from '../sheet-model.ts';
import { alignment } from './alignment.ts';
import { boxBlocks, linkBlocks, threadBlocks } from './links-blocks.ts';
import { partsBlocks } from './parts-blocks.ts';

/** Links, arms and box; alignment and the car's measures. */
export function figuresPage(pageFrame: PageFrame, model: SheetModel): void {
  const flow = new Flow(
    pageFrame,
    { title: 'Links, box and alignment', lying: true },
    3,
    'Centre to centre, at ride height, wheels straight ahead',
  );
  flow.put(...linkBlocks(model), ...partsBlocks(model));
  flow.nextColumn();
  flow.put(...boxBlocks(model), ...threadBlocks(model));
  flow.nextColumn();
  flow.put(heading('Alignment at ride height'), ...alignment(model));
}

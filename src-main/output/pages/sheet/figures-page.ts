import { heading } from '../../flow/block.ts';
import { Flow, flowEvenly } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import type { SheetModel } from '../sheet-model.ts';
import { alignment } from './alignment.ts';
import { boxBlocks, threadBlocks } from './box-blocks.ts';
import { armBlocks, linkMakingBlocks } from './making-blocks.ts';
import { partsBlocks } from './parts-blocks.ts';
import { toleranceBlocks } from './sixteenths.ts';

/** Links and arms: what is cut and how each lies. */
export function linksPage(pageFrame: PageFrame, model: SheetModel): void {
  new Flow(
    pageFrame,
    { title: 'Links and arms', lying: true },
    1,
    'As drawn at ride height, wheels straight ahead',
  ).put(...linkMakingBlocks(model), ...armBlocks(model));
}

/** The box, what an error does, and the alignment and the car's measures. */
export function figuresPage(pageFrame: PageFrame, model: SheetModel): void {
  flowEvenly(
    pageFrame,
    { title: 'Box, tolerances and alignment', lying: true },
    3,
    'At ride height, wheels straight ahead',
    [
      ...boxBlocks(model),
      ...toleranceBlocks(model),
      heading('Alignment at ride height'),
      ...alignment(model),
      ...threadBlocks(model),
    ],
  );
}

/** What has to be on the bench. */
export function partsPage(pageFrame: PageFrame, model: SheetModel): void {
  flowEvenly(pageFrame, { title: 'Parts', lying: true }, 2, 'One list with the shelf’s', partsBlocks(model));
}

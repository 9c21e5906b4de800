import { latePiece } from '../../controls/late.svelte.ts';
import { getOpenLayout } from '../../document/open-layout.svelte.ts';
import { JobClient } from '../../jobs/job-client.ts';
import { lateStrip } from '../late-strip.ts';
import type { Place } from '../place.ts';
import { shaftOnBoard } from './shaft-on-board.ts';
import { ShaftPlace } from './shaft-place.svelte.ts';
import { startShaftWorker } from './start-shaft-worker.ts';

/** The steering shaft from the column to the box. */
export function shaftPlace(): Place {
  const openLayout = getOpenLayout();
  const place = new ShaftPlace(openLayout, new JobClient(startShaftWorker));
  $effect(() => place.follow());
  return {
    id: 'shaft',
    name: 'Shaft',
    column: latePiece(() => import('./ShaftPage.svelte'), { place }),
    strip: lateStrip(
      () => import('./shaft-strip.svelte.ts'),
      ({ shaftStrip }) => shaftStrip(openLayout, place),
    ),
    contributors: [shaftOnBoard(openLayout, place)],
  };
}

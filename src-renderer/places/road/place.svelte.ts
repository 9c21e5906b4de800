import { latePiece } from '../../controls/late.svelte.ts';
import { getOpenLayout } from '../../document/open-layout.svelte.ts';
import { getComparison } from '../../panels/compare/comparison.svelte.ts';
import { lateStrip } from '../late-strip.ts';
import type { Place } from '../place.ts';
import { AxlePull, setAxlePull } from './axle-pull.svelte.ts';
import { RideLine } from './ride-line.ts';
import { roadActions } from './road-actions.ts';
import { pullsByKeys } from './road-keys.ts';
import { roadOnBoard } from './road-on-board.svelte.ts';
import { RoadRun, setRoadRun } from './road-run.svelte.ts';
import { startRideWorker } from './start-ride-worker.ts';

/** A drive over a road, and a hand that pulls the axle on its springs. */
export function roadPlace(): Place {
  const openLayout = getOpenLayout();
  const comparison = getComparison();
  const line = new RideLine(startRideWorker);
  const axlePull = new AxlePull(openLayout, line);
  const road = new RoadRun(openLayout, comparison, line);
  setAxlePull(axlePull);
  setRoadRun(road);
  road.follow();
  return {
    id: 'road',
    name: 'Road',
    column: latePiece(() => import('./RoadPage.svelte'), {}),
    pose: latePiece(() => import('./DrivePanel.svelte'), {}),
    strip: lateStrip(
      () => import('./road-strip.svelte.ts'),
      ({ roadStrip }) => roadStrip(openLayout, comparison, road),
    ),
    contributors: [roadOnBoard(openLayout, comparison, road, axlePull)],
    ownMarks: true,
    actions: roadActions(openLayout, road, axlePull),
    keyUses: [pullsByKeys(axlePull)],
    files: {
      takes: ({ name }) => /\.(csv|tsv|txt)$/i.test(name),
      take: ([file]) => {
        if (file) void road.bring(file);
      },
    },
    escape: () => {
      if (!axlePull.active) return false;
      axlePull.giveBack();
      return true;
    },
    entered: () => {
      road.open = true;
    },
    left: () => road.leave(),
  };
}

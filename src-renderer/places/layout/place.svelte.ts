import { getPerform } from '../../controls/action.ts';
import { shown } from '../../controls/late.svelte.ts';
import { getOpenLayout } from '../../document/open-layout.svelte.ts';
import { getShell } from '../../document/shell.svelte.ts';
import { getShop } from '../../document/shop.svelte.ts';
import { compareOnBoard } from '../../panels/compare/compare-on-board.ts';
import { getComparison } from '../../panels/compare/comparison.svelte.ts';
import { setPointEffects } from '../../panels/points/point-effects.svelte.ts';
import type { Place } from '../place.ts';
import { latePages } from './late-pages.ts';
import { layoutActions } from './layout-actions.ts';
import { mapOnBoard } from './map/map-on-board.svelte.ts';
import { roomOnBoard } from './room/room-on-board.svelte.ts';
import SideColumn from './SideColumn.svelte';
import { startLayoutWorker } from './start-layout-worker.ts';
import { Studies, setStudies } from './studies.svelte.ts';
import { studiesOnBoard } from './studies-on-board.ts';
import { detailOnBoard } from './travel/detail/detail-on-board.svelte.ts';
import { travelOnBoard } from './travel/travel-on-board.svelte.ts';
import { travelStrip } from './travel/travel-strip.svelte.ts';

/** The car, its points and how it behaves over its travel: the place that the board opens in. */
export function layoutPlace(): Place {
  const openLayout = getOpenLayout();
  const shop = getShop();
  const comparison = getComparison();
  const perform = getPerform();
  let travelShown = $state(true);
  const pages = latePages();
  const studies = new Studies(openLayout, startLayoutWorker);
  setStudies(studies);
  setPointEffects(studies.effects);
  const toggleDetail = () => void shop.changeSettings({ arcsDetail: !openLayout.settings.arcsDetail });
  studies.map.follow();
  studies.tuning.follow();
  studies.room.follow();
  $effect(() => studies.effects.follow());
  $effect(() => studies.tolerance.follow());
  $effect(() => studies.forces.follow());
  $effect(() => studies.sit.follow());
  return {
    id: 'layout',
    name: 'Layout',
    column: { value: shown(SideColumn, { pages }) },
    strip: {
      value: () =>
        travelStrip(openLayout, comparison, studies, (tolerance) => void shop.changeSettings({ tolerance })),
    },
    within: Object.values(pages),
    contributors: [
      mapOnBoard(openLayout, studies.map, () => perform('tune')),
      studiesOnBoard(openLayout, studies),
      roomOnBoard(openLayout, studies.room, () => travelShown),
      travelOnBoard(openLayout, () => travelShown),
      detailOnBoard(
        openLayout,
        () => travelShown && openLayout.settings.arcsDetail && !studies.map.shown,
        toggleDetail,
      ),
      compareOnBoard(comparison),
    ],
    opened: (place) => {
      travelShown = !place.ownMarks;
    },
    actions: layoutActions(openLayout, studies, getShell(), toggleDetail),
    escape: () => {
      if (!studies.map.shown) return false;
      studies.map.toggle();
      return true;
    },
  };
}

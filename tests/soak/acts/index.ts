import type { Kind } from '../plan.ts';
import type { World } from '../world.ts';
import { dragPoint, nudgePoint, pose, pullTyre, redo, typeHeight, undo } from './drawing.ts';
import { column, driveRoad, openPlace, showMap, tune, unit } from './places.ts';
import { copyAndBin, drawer, goBack, openAnother } from './shop.ts';
import { clockBack, fullDisk, hide, kill, reload, reloadOther, twoPages } from './troubles.ts';

/** Does one act and says what it did; throws NotNow if that cannot be done as things stand. */
export type Doing = (world: World, lots: readonly number[]) => Promise<string>;

export const ACTS: Readonly<Record<Kind, Doing>> = {
  drag: dragPoint,
  nudge: nudgePoint,
  type: typeHeight,
  undo,
  redo,
  pose,
  pull: pullTyre,
  place: openPlace,
  road: driveRoad,
  tune,
  map: showMap,
  column,
  drawer,
  unit,
  'open another': openAnother,
  'go back': goBack,
  'copy and bin': copyAndBin,
  'two pages': twoPages,
  'reload the other': reloadOther,
  hide,
  'clock back': clockBack,
  'full disk': fullDisk,
  kill,
  reload,
};

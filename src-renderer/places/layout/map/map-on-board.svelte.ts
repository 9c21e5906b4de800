import { toRadians } from '../../../../shared-math/units/index.ts';
import type { BoardView } from '../../../board/board-view.svelte.ts';
import { type Contribution, piece } from '../../../board/contributor.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import { pageGround } from '../../../look/ground.svelte.ts';
import { rampColours } from '../../../look/ramp.ts';
import { mapNotes } from '../study-notes.ts';
import type { BoxMap } from './box-map.svelte.ts';
import MapButton from './MapButton.svelte';
import MapOnBoard from './MapOnBoard.svelte';
import { MapHands } from './map-hands.ts';
import { MapPainter } from './map-painter.ts';
import { stepsWithin } from './map-scale.ts';

/** The map on the board: its colours under the car, its notes and legend over it, and what a click on it does. */
export const mapOnBoard =
  (openLayout: OpenLayout, map: BoxMap, tune: () => void) =>
  (view: BoardView): Contribution => {
    const hands = new MapHands(view, map);
    const painter = new MapPainter();

    const colours = $derived.by(() => {
      // Read off the page, which does not say by itself that it has another ground.
      void pageGround.night;
      const style = getComputedStyle(document.documentElement);
      const token = (name: string) => style.getPropertyValue(`--${name}`).trim();
      const { scale } = map;
      return rampColours(
        { paper: token('panel'), within: token('steel'), beyond: token('attention') },
        scale.levels.length + 1,
        stepsWithin(scale),
      );
    });

    function underlay() {
      const { answer, hits, view: on } = map;
      if (!map.shown || !answer || !view.shown.includes(on)) return undefined;
      // A window of another place keeps no hatches of the one before.
      const same =
        hits &&
        hits.window.from.join() === answer.window.from.join() &&
        hits.window.to.join() === answer.window.to.join();
      const { camera, sheet } = view;
      const left = sheet.origin[on][0] * camera.scale + camera.x;
      const top = sheet.origin[on][1] * camera.scale + camera.y;
      const across = on === 'side' ? -camera.scale : camera.scale;
      const picture = { answer, hits: same ? hits : null, colours, limit: toRadians(map.scale.limit) };
      return (context: CanvasRenderingContext2D, palette: Parameters<MapPainter['paint']>[3]) =>
        painter.paint(context, picture, (x, z) => [left + x * across, top - z * camera.scale], palette);
    }

    return {
      id: 'map',
      underlay,
      overlay: ({ shown, onBoard }) => ({ firstNotes: mapNotes(map, shown, onBoard) }),
      pointer: {
        move: (x, y) => hands.pointAt(x, y),
        tap: (x, y) => hands.tap(x, y),
        leave: () => hands.leave(),
      },
      // Where a click moves the box.
      cursor: () => (map.pointed === null ? undefined : 'crosshair'),
      above: piece(MapOnBoard, {
        openLayout,
        map,
        hands,
        tune,
        get colours() {
          return colours;
        },
      }),
      button: piece(MapButton, { map }),
      spots: {
        map: (across: number, up: number) =>
          map.shown ? { view: map.view, at: [map.view === 'side' ? -across : across, -up] } : undefined,
      },
    };
  };

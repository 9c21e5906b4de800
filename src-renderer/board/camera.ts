import type { Box, ViewPoint } from '../../shared-math/drawing/index.ts';

/** A place on the board, right and down from its corner, px of the screen. */
export type ScreenPoint = readonly [right: number, down: number] & { readonly unit?: 'px of the screen' };

/** How the sheet lies on the board: screen = sheet · scale + (x, y). Screen px, sheet mm. */
export interface Camera {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room kept free around what is fitted, px. */
export interface Margins {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** px per mm: a whole car in a thumbnail, and a 1/16 in over a finger's width. */
export const SCALE_LEAST = 0.02;
export const SCALE_MOST = 16;

export function toScreen(camera: Camera, place: ViewPoint): ScreenPoint {
  return [place[0] * camera.scale + camera.x, place[1] * camera.scale + camera.y];
}

export function toSheet(camera: Camera, screen: ScreenPoint): ViewPoint {
  return [(screen[0] - camera.x) / camera.scale, (screen[1] - camera.y) / camera.scale];
}

export function panned(camera: Camera, right: number, down: number): Camera {
  return { scale: camera.scale, x: camera.x + right, y: camera.y + down };
}

/** Zooms so that what lies under the screen place stays there. */
export function zoomedAt(camera: Camera, screen: ScreenPoint, factor: number): Camera {
  const scale = Math.min(SCALE_MOST, Math.max(SCALE_LEAST, camera.scale * factor));
  const kept = scale / camera.scale;
  return {
    scale,
    x: screen[0] - (screen[0] - camera.x) * kept,
    y: screen[1] - (screen[1] - camera.y) * kept,
  };
}

/** Shows a box as large as the board allows, in the middle of what the margins leave. */
export function fitted(box: Box, size: Size, margins: Margins): Camera {
  const width = Math.max(1, size.width - margins.left - margins.right);
  const height = Math.max(1, size.height - margins.top - margins.bottom);
  const scale = Math.min(
    SCALE_MOST,
    Math.max(
      SCALE_LEAST,
      Math.min(width / Math.max(1, box.right - box.left), height / Math.max(1, box.bottom - box.top)),
    ),
  );
  return {
    scale,
    x: margins.left + width / 2 - ((box.left + box.right) / 2) * scale,
    y: margins.top + height / 2 - ((box.top + box.bottom) / 2) * scale,
  };
}

/** Part of the way from one camera to another: scales by equal ratios, so that a flight looks even. */
export function between(from: Camera, to: Camera, share: number): Camera {
  if (share >= 1) return to;
  const scale = from.scale * (to.scale / from.scale) ** share;
  // The place that both cameras show at the same screen spot stays there all the way.
  const turn = to.scale === from.scale ? share : (scale - from.scale) / (to.scale - from.scale);
  return { scale, x: from.x + (to.x - from.x) * turn, y: from.y + (to.y - from.y) * turn };
}

import type { Point } from '../../shared-math/geometry/points.ts';
import { carBars, photographedCar, type Shot } from './photo-scene.ts';
import { pngFile } from './picture-files.ts';
import { axesOf, photographed } from './pinhole.ts';

type Colour = readonly [number, number, number];

/** A picture that is painted on with round brushes, edges smoothed by how much of a pixel is covered. */
class Canvas {
  readonly rgb: Uint8Array;
  readonly width: number;
  readonly height: number;

  constructor(width: number, height: number, ground: (y: number) => Colour) {
    this.width = width;
    this.height = height;
    this.rgb = new Uint8Array(3 * width * height);
    for (let y = 0; y < height; y += 1)
      for (let x = 0; x < width; x += 1) this.rgb.set(ground(y), 3 * (y * width + x));
  }

  stroke(
    [ax, ay]: readonly [number, number],
    [bx, by]: readonly [number, number],
    ra: number,
    rb: number,
    colour: Colour,
  ): void {
    const most = Math.max(ra, rb) + 1;
    const [left, right] = [Math.floor(Math.min(ax, bx) - most), Math.ceil(Math.max(ax, bx) + most)];
    const [top, bottom] = [Math.floor(Math.min(ay, by) - most), Math.ceil(Math.max(ay, by) + most)];
    const square = (bx - ax) ** 2 + (by - ay) ** 2;
    for (let y = Math.max(0, top); y <= Math.min(this.height - 1, bottom); y += 1)
      for (let x = Math.max(0, left); x <= Math.min(this.width - 1, right); x += 1) {
        const [px, py] = [x + 0.5 - ax, y + 0.5 - ay];
        const share = square > 0 ? Math.min(1, Math.max(0, (px * (bx - ax) + py * (by - ay)) / square)) : 0;
        const away = Math.hypot(px - share * (bx - ax), py - share * (by - ay));
        const cover = Math.min(1, Math.max(0, ra + (rb - ra) * share - away + 0.5));
        if (cover <= 0) continue;
        const at = 3 * (y * this.width + x);
        for (const [channel, value] of colour.entries())
          this.rgb[at + channel] = Math.round(
            (this.rgb[at + channel] as number) * (1 - cover) + value * cover,
          );
      }
  }
}

/** The photographed car as an invented camera sees it, with the frame of battens and the straight edge: a PNG file. */
export function renderedPhoto(shot: Shot): Buffer {
  const { camera } = shot;
  const [width, height] = camera.size;
  const ahead = axesOf(camera)[2];
  const depthOf = (p: Point) =>
    (p[0] - camera.at[0]) * ahead[0] + (p[1] - camera.at[1]) * ahead[1] + (p[2] - camera.at[2]) * ahead[2];
  const px = (p: Point, mm: number) => (mm * camera.focal) / depthOf(p);
  const canvas = new Canvas(width, height, (y) => {
    const shade = Math.round(214 - (28 * y) / height);
    return [shade, shade - 4, shade - 12];
  });
  // A bar of the world is a bent curve in the photo: it is painted in short pieces.
  const bar = (from: Point, to: Point, radius: number, colour: Colour) => {
    const pieces = 24;
    const along = (share: number): Point => [
      from[0] + (to[0] - from[0]) * share,
      from[1] + (to[1] - from[1]) * share,
      from[2] + (to[2] - from[2]) * share,
    ];
    for (let i = 0; i < pieces; i += 1) {
      const [a, b] = [along(i / pieces), along((i + 1) / pieces)];
      canvas.stroke(photographed(camera, a), photographed(camera, b), px(a, radius), px(b, radius), colour);
    }
  };
  const BATTEN: Colour = [236, 224, 196];
  const INK: Colour = [34, 38, 44];
  const frame = () => {
    const line = (from: Point, to: Point, radius: number, colour: Colour) => bar(from, to, radius, colour);
    line(shot.edge[0], shot.edge[1], 12, INK);
    line(shot.edge[0], shot.edge[1], 9, BATTEN);
    for (const [i, from] of shot.frame.entries()) line(from, shot.frame[(i + 1) % 4] as Point, 14, INK);
    for (const [i, from] of shot.frame.entries()) line(from, shot.frame[(i + 1) % 4] as Point, 11, BATTEN);
    for (const corner of shot.frame) {
      const at = photographed(camera, corner);
      canvas.stroke(at, at, px(corner, 7), px(corner, 7), INK);
      canvas.stroke(at, at, px(corner, 2), px(corner, 2), [255, 255, 255]);
    }
  };
  const { bars, balls } = carBars(photographedCar());
  if (shot.view === 'top') frame();
  const mean = ({ from, to }: { from: Point; to: Point }) => depthOf(from) + depthOf(to);
  for (const { from, to, radius, colour } of bars.toSorted((a, b) => mean(b) - mean(a))) {
    bar(from, to, radius + 2.5, INK);
    bar(from, to, radius, colour);
  }
  if (shot.view === 'side') frame();
  for (const ball of balls.toSorted((a, b) => depthOf(b) - depthOf(a))) {
    const at = photographed(camera, ball);
    for (const [radius, colour] of [
      [17, INK],
      [14, [250, 250, 246]],
      [3.5, INK],
    ] as const)
      canvas.stroke(at, at, px(ball, radius), px(ball, radius), colour);
  }
  return pngFile(width, height, canvas.rgb);
}

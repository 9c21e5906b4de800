import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { beforeAll, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

const HEAD = `
import { createState, prepareFrontEnd, solveFrontEnd } from '../../../shared-math/linkage/index.ts';
import type { Layout, LayoutDocument } from '../../../shared-math/layout/index.ts';
import { type Degrees, toRadians } from '../../../shared-math/units/index.ts';
declare const layout: Layout;
declare const document: LayoutDocument;
declare const roll: Degrees;
`;

const COLUMN = `
import type { Column } from '../../../src-main/output/tables/column.ts';
import type { WheelState } from '../../../shared-math/linkage/index.ts';
`;

const column = (of: string) =>
  `${COLUMN}export const one: Column<WheelState> = { name: 'camber', unit: 'deg', of: (wheel) => wheel.${of} };`;

const PLANE = `
import type { ViewPoint } from '../../../shared-math/drawing/index.ts';
import { composed, applied } from '../../../shared-math/trace/index.ts';
import type { FlatPlace, Homography, PhotoPlane, PhotoSpot, UnbentSpot } from '../../../shared-math/trace/index.ts';
import { undistorted, distorted } from '../../../shared-math/trace/lens.ts';
import { type Camera, type ScreenPoint, toScreen, toSheet } from '../../../src-renderer/board/camera.ts';
declare const plane: PhotoPlane;
declare const place: ViewPoint;
declare const spot: PhotoSpot;
declare const unbent: UnbentSpot;
declare const screen: ScreenPoint;
declare const camera: Camera;
declare const flat: Homography<UnbentSpot, FlatPlace>;
declare const placed: Homography<FlatPlace, ViewPoint>;
`;

const CARRIED = `
import { ballCircle, carryPoint, createState, prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import type { Layout } from '../../../shared-math/layout/index.ts';
import type { FramePoint, Point } from '../../../shared-math/geometry/points.ts';
import type { AxleRow } from '../../../shared-math/pose/rows.ts';
declare const layout: Layout;
declare const worked: Point;
const front = prepareFrontEnd(layout);
const state = createState();
const out = new Float64Array(3);
const { left } = layout.axle;
const { steering } = layout;
`;

/** Lines that import the program, each in a file of its own. */
const LINES = {
  radians: `${HEAD}solveFrontEnd(prepareFrontEnd(layout), 10, toRadians(roll), 0, createState());`,
  degrees: `${HEAD}solveFrontEnd(prepareFrontEnd(layout), 10, roll, 0, createState());`,
  unresolved: `${HEAD}prepareFrontEnd(document);`,
  column: column('camber'),
  misspelt: column('chamber'),
  traced: `${PLANE}export const there: ViewPoint | undefined = plane.toPlace(spot);
export const back: PhotoSpot | undefined = plane.toPhoto(place);`,
  lines: `${PLANE}export const whole: Homography<UnbentSpot, ViewPoint> = composed(placed, flat);
export const there: ViewPoint | undefined = applied(whole, undistorted(plane.lens, spot));
export const back: PhotoSpot = distorted(plane.lens, unbent);
export const seen: ViewPoint = toSheet(camera, toScreen(camera, place));`,
  bentIntoPlane: `${PLANE}applied(flat, spot);`,
  unbentTwice: `${PLANE}undistorted(plane.lens, unbent);`,
  composedAgainst: `${PLANE}composed(flat, placed);`,
  placeUnbent: `${PLANE}distorted(plane.lens, place);`,
  screenAsPlace: `${PLANE}plane.toPhoto(screen);`,
  screenAsSpot: `${PLANE}plane.toPlace(screen);`,
  placeAsScreen: `${PLANE}toSheet(camera, place);`,
  carried: `${CARRIED}carryPoint(front, state, 'axle-left', left.kingpinTop, out);
carryPoint(front, state, 'spindle-left', left.tieRodBall, out);
carryPoint(front, state, 'pitman', steering.box.pitmanBall, out);
carryPoint(front, state, 'frame', steering.box.sectorCentre, out);
carryPoint(front, state, 'spindle-right', worked, out);`,
  spindleByAxle: `${CARRIED}carryPoint(front, state, 'axle-left', left.tieRodBall, out);`,
  axleBySpindle: `${CARRIED}carryPoint(front, state, 'spindle-left', left.kingpinBottom, out);`,
  frameByPitman: `${CARRIED}carryPoint(front, state, 'pitman', steering.box.sectorCentre, out);`,
  pitmanByFrame: `${CARRIED}carryPoint(front, state, 'frame', steering.box.pitmanBall, out);`,
  halfAsDrawn: `${CARRIED}carryPoint(front, state, 'axle-left', front.left.bottom, out);`,
  halfAsFrame: `${CARRIED}export const foot: FramePoint = front.left.bottom;`,
  frameInHalf: `${CARRIED}ballCircle(front.left.bottom, front.left.upward, steering.box.sectorCentre);`,
  rowAgainst: `${CARRIED}export const row: AxleRow =
  { form: 'distance', half: 'left', axle: steering.box.sectorCentre, frame: left.kingpinTop };`,
  placeAsSpot: `${PLANE}plane.toPlace(place);`,
  spotAsPlace: `${PLANE}plane.toPhoto(spot);`,
  placeKeptAsSpot: `${PLANE}export const there: PhotoSpot | undefined = plane.toPlace(spot);`,
} as const;

type Said = Readonly<Record<keyof typeof LINES, string>>;

/** What the compiler says of each of them, in one run: its messages on that file, or nothing. */
function compilerSays(): Said {
  const folder = mkdtempSync(join(root, 'tests/types/scratch-'));
  try {
    for (const [name, lines] of Object.entries(LINES))
      writeFileSync(join(folder, `${name}.ts`), `${lines}\n`);
    writeFileSync(
      join(folder, 'tsconfig.json'),
      // What one of them imports and only another uses is no fault here.
      JSON.stringify({
        extends: '../../tsconfig.json',
        compilerOptions: { noUnusedLocals: false },
        include: ['*.ts'],
      }),
    );
    const compiler = join(root, 'node_modules/typescript/bin/tsc');
    const { status, stdout } = spawnSync(process.execPath, [compiler, '-p', folder], { encoding: 'utf8' });
    // 2: it ran and found fault, as it should with some of them.
    expect(status, stdout).toBe(2);
    const of = (name: string) => stdout.split('\n').filter((line) => line.includes(`/${name}.ts(`));
    return Object.fromEntries(Object.keys(LINES).map((name) => [name, of(name).join('\n')])) as Said;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

let said: Said;
beforeAll(() => {
  said = compilerSays();
}, 120_000);

test('degrees given where radians are asked do not compile; turned into radians they do', () => {
  expect(said.radians).toBe('');
  expect(said.degrees).toMatch(/not assignable to parameter of type 'Radians'/);
});

test('a layout must be resolved before it is solved', () => {
  expect(said.unresolved).toMatch(/not assignable to parameter of type/);
});

test('a column of a table that names what a row has not does not compile', () => {
  expect(said.column).toBe('');
  expect(said.misspelt).toMatch(/Property 'chamber' does not exist/);
});

test('a spot of a photo, px, is no place of a view, mm, and the other way round', () => {
  expect(said.traced).toBe('');
  expect(said.placeAsSpot).toMatch(/not assignable to parameter of type 'PhotoSpot'/);
  expect(said.spotAsPlace).toMatch(/not assignable to parameter of type 'ViewPoint'/);
  expect(said.placeKeptAsSpot).toMatch(/not assignable/);
});

test('each step from a photo to its view takes the plane before it: bent, unbent, flat, the view', () => {
  expect(said.lines).toBe('');
  expect(said.bentIntoPlane).toMatch(/'PhotoSpot' is not assignable to parameter of type 'UnbentSpot'/);
  expect(said.unbentTwice).toMatch(/'UnbentSpot' is not assignable to parameter of type 'PhotoSpot'/);
  expect(said.composedAgainst).toMatch(/not assignable to parameter of type/);
  expect(said.placeUnbent).toMatch(/'ViewPoint' is not assignable to parameter of type 'UnbentSpot'/);
});

test('px of the screen are neither px of a photo nor mm of a view', () => {
  expect(said.screenAsPlace).toMatch(/'ScreenPoint' is not assignable to parameter of type 'ViewPoint'/);
  expect(said.screenAsSpot).toMatch(/'ScreenPoint' is not assignable to parameter of type 'PhotoSpot'/);
  expect(said.placeAsScreen).toMatch(/'ViewPoint' is not assignable to parameter of type 'ScreenPoint'/);
});

test('a point is carried by what it is fixed to: frame, axle, spindle and pitman arm do not compile for one another', () => {
  expect(said.carried).toBe('');
  expect(said.spindleByAxle).toMatch(/'SpindlePoint' is not assignable to parameter of type 'AxlePoint'/);
  expect(said.axleBySpindle).toMatch(/'AxlePoint' is not assignable to parameter of type 'SpindlePoint'/);
  expect(said.frameByPitman).toMatch(/'FramePoint' is not assignable to parameter of type 'PitmanPoint'/);
  expect(said.pitmanByFrame).toMatch(/'PitmanPoint' is not assignable to parameter of type 'FramePoint'/);
  expect(said.rowAgainst).toMatch(/'FramePoint' is not assignable to type 'AxlePoint'|carriedBy/);
});

test('a point from the axle’s centre, in the axes of its half, is none of the car as it is drawn', () => {
  expect(said.halfAsDrawn).toMatch(/'HalfPoint' is not assignable to parameter of type 'AxlePoint'/);
  expect(said.halfAsFrame).toMatch(/'HalfPoint' is not assignable to type 'FramePoint'|carriedBy/);
  expect(said.frameInHalf).toMatch(/'FramePoint' is not assignable to parameter of type/);
});

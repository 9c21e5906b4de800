import { setImmediate } from 'node:timers/promises';
import type { Box } from '../../../shared-math/drawing/index.ts';
import { type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import {
  doingOf,
  type HandPose,
  MovedCar,
  RIDE_HEIGHT,
  type ShownCar,
} from '../../../shared-math/moving/index.ts';
import { ISOMETRIC } from '../../../shared-math/pictorial/index.ts';
import { sweepTurn } from '../../../shared-math/sweep/index.ts';
import { type LengthStyle, toRadians } from '../../../shared-math/units/index.ts';
import { CAUTION, FAILURE_WORDS } from '../../../shared-math/words/index.ts';
import { DrawingRefused, rasterOf, SvgPen } from '../drawings/index.ts';
import { INK, RULE } from '../pens/colours.ts';
import { CAR_INKS, DRAWN_LARGER, MovedPicture } from '../pens/moved-picture.ts';
import { noType } from '../pens/no-type.ts';
import { paintMarks } from '../pens/paint-marks.ts';
import { lineHeight, type TextStyle } from '../pens/print-pen.ts';
import { BODY_SOFT, LABEL, SMALL } from '../pens/styles.ts';
import { brokenInto, shortened, writeLines } from '../pens/text-lines.ts';
import { ApngWriter } from './apng.ts';
import type { FilmJob } from './job.ts';

// The film: the picture of a page that moves, gone through its travel there and back, for a message to a customer.

/** Pictures in a second: enough to be seen as motion, few enough for a message. */
export const FRAMES_PER_SECOND = 12;

/** mm of the film's own paper: its type is as large as the board's at this width. */
const WIDE = 150;
const EDGE = 4;
const NAME: TextStyle = { face: 'headingBold', size: 15, colour: INK };
const SAID: TextStyle = { face: 'bold', size: 11.5, colour: INK };
const SIGN = 6;
/** mm that a car's line in the key takes before its words. */
const KEY = 9;

/** The poses of a film, from one end of the way to the other and back. The first, which every reader shows, is the top of a bump. */
function posesOf({ over, seconds }: FilmJob, cars: readonly MovedCar[]): HandPose[] {
  const count = seconds * FRAMES_PER_SECOND;
  const layouts = cars.map(({ layout }) => layout);
  const locks = over === 'steering' ? layouts.map((layout) => sweepTurn(prepareFrontEnd(layout), 0, 0)) : [];
  const ends = {
    bump: [
      Math.min(...layouts.map(({ travel }) => travel.bump)),
      -Math.min(...layouts.map(({ travel }) => travel.rebound)),
    ],
    roll: [1, -1].map((side) => side * toRadians(Math.min(...layouts.map(({ travel }) => travel.roll)))),
    steering: [
      Math.min(...locks.map(({ left }) => left.handwheel)),
      Math.max(...locks.map(({ right }) => right.handwheel)),
    ],
  }[over] as [number, number];
  return Array.from({ length: count }, (_, i) => {
    const swing = Math.cos((2 * Math.PI * i) / count);
    const value = (swing >= 0 ? ends[0] : -ends[1]) * swing;
    return { ...RIDE_HEIGHT, [{ bump: 'heave', roll: 'roll', steering: 'handwheel' }[over]]: value };
  });
}

/** A film's cars and its picture, made once. */
interface Reel {
  readonly job: FilmJob;
  readonly cars: readonly ShownCar[];
  readonly picture: MovedPicture;
  readonly poses: readonly HandPose[];
  readonly box: Box;
  readonly style: LengthStyle;
}

/** Refuses names in letters that no type at hand has, before anything is drawn. */
function refuseUnsettable({ car = '' }: FilmJob, documents: readonly LayoutDocument[]): void {
  const pen = new SvgPen('outlines');
  const names = [
    ['The car’s name', car],
    ...documents.map(({ name }) => ['The layout’s name', name]),
  ] as const;
  for (const [what = '', text = ''] of names) {
    const letters = pen.unsettable(text);
    if (letters.length > 0) throw noType(what, text, letters);
  }
}

function reelOf(job: FilmJob): Reel {
  const documents: readonly LayoutDocument[] = job.beside ? [job.document, job.beside] : [job.document];
  const cars = documents.map(
    (document, at): ShownCar => ({
      at: at as 0 | 1,
      name: document.name,
      car: new MovedCar(resolveLayout(document)),
    }),
  );
  refuseUnsettable(job, documents);
  for (const { car } of cars) if (!car.standing) throw new DrawingRefused(FAILURE_WORDS[car.failure]);
  const moved = cars.map(({ car }) => car);
  const picture = new MovedPicture(moved);
  const poses = posesOf(job, moved);
  return {
    job,
    cars,
    picture,
    poses,
    box: picture.box(ISOMETRIC, [poses[0], poses[poses.length / 2]] as HandPose[]),
    style: { unit: job.unit, fraction: job.fraction },
  };
}

/** One picture of the film as an SVG, its cars put into the pose. */
function frameOf({ job, cars, picture, box, style }: Reel, pose: HandPose): string {
  for (const { car } of cars) {
    const failure = car.put(pose);
    if (failure !== undefined) throw new DrawingRefused(FAILURE_WORDS[failure]);
  }
  const pen = new SvgPen('outlines');
  const inner = WIDE - 2 * EDGE;
  const scale = (box.right - box.left) / inner;
  const high = (box.bottom - box.top) / scale;
  const step = lineHeight(SAID.size);
  const caution = brokenInto(pen, CAUTION, SMALL, inner);
  const foot = (cars.length > 1 ? 3 : 2) * step + 2 + caution.length * lineHeight(SMALL.size) + SIGN;
  pen.addPage({ width: WIDE, height: 2 * EDGE + 8 + high + foot });
  const title = shortened(pen, job.car || job.document.name, NAME, inner);
  pen.text(title, EDGE, EDGE + 4.5, NAME);
  const from = { x: EDGE - box.left / scale, y: EDGE + 8 - box.top / scale, scale };
  paintMarks(pen, picture.marks(cars, ISOMETRIC), from);
  const { right, down, align } = picture.front;
  pen.text('FRONT', from.x + right / scale, from.y + down / scale, LABEL, align);
  let y = EDGE + 8 + high;
  pen.text(
    job.over === 'steering'
      ? 'Arrows on the ground: where the wheels point.'
      : `Arrows on the ground: where the wheels steer by themselves, drawn ${DRAWN_LARGER} times as large.`,
    EDGE,
    y + 3,
    BODY_SOFT,
  );
  y += SIGN;
  const { first, each } = doingOf(cars, style);
  // A sentence of two lines has the room of two; where two cars are said, the first has one line.
  const above = each.length > 0 ? [shortened(pen, first, SAID, inner)] : brokenInto(pen, first, SAID, inner);
  y = writeLines(pen, above, EDGE, y, SAID);
  each.forEach(({ name, words }, i) => {
    const ink = CAR_INKS[i as 0 | 1];
    pen.line(EDGE, y + 0.6 * step, EDGE + 7, y + 0.6 * step, {
      width: 0.9,
      colour: ink.colour,
      ...(ink.dash ? { dash: ink.dash } : {}),
    });
    // A long name gives way to the figures.
    const room = inner - KEY;
    const own = shortened(pen, name, SAID, room - pen.widthOf(`: ${words}`, SAID));
    y = writeLines(pen, [`${own}: ${words}`], EDGE + KEY, y, SAID);
  });
  const base = 2 * EDGE + 8 + high + foot - EDGE - caution.length * lineHeight(SMALL.size);
  pen.line(EDGE, base - 1, WIDE - EDGE, base - 1, { width: 0.2, colour: RULE });
  writeLines(pen, caution, EDGE, base, SMALL);
  return pen.document(0, job.document.name);
}

/** The pictures of a film at the two ends of its way, each an SVG: to look at before it is made. */
export function filmPreview(job: FilmJob): string[] {
  const reel = reelOf(job);
  const { poses } = reel;
  // By the film's own steps: which of two parts that neither covers is drawn first goes by the picture before.
  const frames = poses.slice(0, poses.length / 2 + 1).map((pose) => frameOf(reel, pose));
  return [frames[0] as string, frames.at(-1) as string];
}

/**
 * Makes a film: an animated PNG's bytes, one frame after another with word of each. Outcomes: the whole file; rejects with a
 * DrawingRefused where a pose cannot be, and with the signal's reason when called off.
 */
export async function makeFilm(job: FilmJob): Promise<Uint8Array> {
  const reel = reelOf(job);
  const { poses } = reel;
  const writer = new ApngWriter(poses.length, FRAMES_PER_SECOND);
  for (const [i, pose] of poses.entries()) {
    job.signal?.throwIfAborted();
    writer.add(await rasterOf(frameOf(reel, pose), job.width));
    job.progress?.(i + 1, poses.length, 'Picture');
    // Lets whoever wants to call it off be heard.
    await setImmediate();
  }
  job.signal?.throwIfAborted();
  return writer.end();
}

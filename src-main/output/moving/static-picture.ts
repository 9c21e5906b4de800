import { MovedCar, standingWords } from '../../../shared-math/moving/index.ts';
import { ISOMETRIC } from '../../../shared-math/pictorial/index.ts';
import { SOFT } from '../pens/colours.ts';
import { CAR_INKS, DRAWN_LARGER, MovedPicture } from '../pens/moved-picture.ts';
import { ANCHORS, frameWords, frontSize, markAttributes } from '../pens/page-marks.ts';
import { type Html, html, outsideText } from './html.ts';
import type { MovingModel } from './moving-model.ts';

/** What stands for a line of the picture in the key below it. */
function keyLine(colour: string, dash: readonly number[] | undefined): Html {
  return html`<svg viewBox="0 0 22 8" aria-hidden="true"><path d="M1 4H21" fill="none" stroke="${colour}" stroke-width="2.4"${{
    markup: dash ? ` stroke-dasharray="${dash.map((each) => 2 * each).join(' ')}"` : '',
  }}/></svg>`;
}

/** What the lines of the picture are. */
export function pictureKey({ cars }: MovingModel): Html {
  const lines = cars.map(({ at, name }) => {
    const { colour, dash } = CAR_INKS[at];
    const whose = cars.length > 1 ? html`${outsideText(name)}` : html`where the wheels steer by themselves`;
    return html`<span>${keyLine(colour, dash)}${whose}</span>`;
  });
  const note =
    cars.length > 1
      ? `arrows: where the wheels steer by themselves, drawn ${DRAWN_LARGER} times as large`
      : `drawn ${DRAWN_LARGER} times as large`;
  return html`<p class="key">${lines}<span>${keyLine('#a9b0b4', [2, 1.6])}where the driver points them</span><span>${note}</span></p>`;
}

/**
 * The picture with which the page opens, made step by step as its script makes it, from cars that have stood nowhere else:
 * where nothing says which of two parts is the nearer, the order in which they are drawn hangs on a pose's last digits.
 */
function openingPicture({ data }: MovingModel) {
  const cars = data.cars.map(({ layout }, at) => ({ at: at as 0 | 1, car: new MovedCar(layout) }));
  const picture = new MovedPicture(cars.map(({ car }) => car));
  const box = picture.box(ISOMETRIC);
  for (const { car } of cars) car.put(data.start);
  const paths = picture
    .marks(cars, ISOMETRIC)
    .map((mark) => `<path${attributesOf(markAttributes(mark, box))}/>`)
    .join('');
  return { box, paths: { markup: paths }, front: picture.front };
}

/** The picture in the pose in which the page opens, as its script would draw it. */
export function staticPicture(model: MovingModel): Html {
  const { cars, data } = model;
  const { box, paths, front } = openingPicture(model);
  const { right, down, align } = front;
  const view = frameWords(box);
  const said = `The front axle and steering seen from ahead and from the left. ${standingWords(cars[0]!.car, data.start, data.style)}.`;
  return html`<figure class="picture"><svg id="picture" viewBox="${view}" role="img" aria-labelledby="picture-said"><title id="picture-said">${said}</title>
<g id="marks">${paths}</g><text id="front" x="${right.toFixed(0)}" y="${down.toFixed(0)}" font-size="${frontSize(box)}" text-anchor="${ANCHORS[align]}">FRONT</text></svg></figure>`;
}

const attributesOf = (entries: Readonly<Record<string, string>>) =>
  Object.entries(entries)
    .map(([name, value]) => ` ${name}="${value}"`)
    .join('');

/** The same picture as a file of its own. */
export function pictureFile(model: MovingModel): string {
  const { box, paths, front } = openingPicture(model);
  const { right, down, align } = front;
  const word = `<text x="${right.toFixed(0)}" y="${down.toFixed(0)}" font-family="sans-serif" font-size="${frontSize(box)}" fill="${SOFT}" text-anchor="${ANCHORS[align]}">FRONT</text>`;
  const [left, top, width, height] = frameWords(box).split(' ');
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${frameWords(box)}" width="${width}" height="${height}" stroke-linecap="round" stroke-linejoin="round"><rect x="${left}" y="${top}" width="${width}" height="${height}" fill="#ffffff"/>${paths.markup}${word}</svg>`;
}

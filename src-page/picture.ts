import type { Box } from '../shared-math/drawing/index.ts';
import { type ShownCar, seenWords } from '../shared-math/moving/index.ts';
import { ISOMETRIC, keptTurn, type Turn } from '../shared-math/pictorial/index.ts';
import { toDegrees, toRadians } from '../shared-math/units/index.ts';
import { MovedPicture } from '../src-main/output/pens/moved-picture.ts';
import { ANCHORS, frameWords, frontSize, markAttributes } from '../src-main/output/pens/page-marks.ts';
import { element } from './page-parts.ts';

/** Radians of turning for each px that a finger goes. */
const PER_PIXEL = 0.008;
/** Degrees of turning in a place of the slider, which has a hundred to each side. */
const DEGREES = 1.8;

const SVG = 'http://www.w3.org/2000/svg';

/** The picture of the page: its marks drawn anew in the same elements, and turned by hand. */
export class Picture {
  readonly #svg: SVGSVGElement;
  readonly #marks = element('marks');
  readonly #front = element('front');
  readonly #seen = element('seen') as HTMLInputElement;
  readonly #picture: MovedPicture;
  #turn: Turn = ISOMETRIC;
  #box: Box;
  onTurned = () => {};

  constructor(svg: SVGSVGElement, cars: readonly ShownCar[]) {
    this.#svg = svg;
    this.#picture = new MovedPicture(cars.map(({ car }) => car));
    this.#box = this.#picture.box(this.#turn);
    svg.classList.add('turning');
    let from: number | undefined;
    svg.addEventListener('pointerdown', (event) => {
      from = event.clientX;
      svg.setPointerCapture(event.pointerId);
    });
    svg.addEventListener('pointermove', (event) => {
      if (from === undefined) return;
      this.#turnTo(this.#turn.azimuth + (from - event.clientX) * PER_PIXEL);
      from = event.clientX;
    });
    for (const end of ['pointerup', 'pointercancel'] as const)
      svg.addEventListener(end, () => {
        from = undefined;
      });
    this.#seen.addEventListener('input', () => this.#turnTo(toRadians(-Number(this.#seen.value) * DEGREES)));
    this.#say();
  }

  #turnTo(azimuth: number): void {
    this.#turn = keptTurn({ ...this.#turn, azimuth });
    this.#box = this.#picture.box(this.#turn);
    this.#say();
    this.onTurned();
  }

  /** The slider and its words: as with the others, its left is the car's left. */
  #say(): void {
    const words = seenWords(this.#turn.azimuth);
    this.#seen.value = String(Math.round(-toDegrees(this.#turn.azimuth) / DEGREES));
    this.#seen.setAttribute('aria-valuetext', words);
    element('seen-words').textContent = words;
  }

  draw(shown: readonly ShownCar[]): void {
    const marks = this.#picture.marks(shown, this.#turn);
    this.#svg.setAttribute('viewBox', frameWords(this.#box));
    const paths = this.#marks.children;
    while (paths.length < marks.length) this.#marks.append(document.createElementNS(SVG, 'path'));
    while (paths.length > marks.length) paths[paths.length - 1]?.remove();
    marks.forEach((mark, i) => {
      const path = paths[i] as Element;
      for (const [name, value] of Object.entries(markAttributes(mark, this.#box)))
        if (path.getAttribute(name) !== value) path.setAttribute(name, value);
    });
    const { right, down, align } = this.#picture.front;
    const word = {
      x: right.toFixed(0),
      y: down.toFixed(0),
      'font-size': String(frontSize(this.#box)),
      'text-anchor': ANCHORS[align],
    };
    for (const [name, value] of Object.entries(word)) this.#front.setAttribute(name, value);
  }
}

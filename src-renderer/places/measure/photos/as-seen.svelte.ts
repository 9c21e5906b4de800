import { type Eye, type Eyes, VIEWS, type View } from '../../../../shared-math/drawing/index.ts';
import type { Photo } from '../../../../shared-math/layout/index.ts';
import {
  adjustedCameras,
  adjustedEye,
  eyeOf,
  planeOf,
  stanceOf,
} from '../../../../shared-math/trace/index.ts';
import { formatDegrees, formatSpan, toDegrees } from '../../../../shared-math/units/index.ts';
import type { Measuring } from '../../../document/measuring.svelte.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import type { Trace } from './trace.svelte.ts';
import { stillWanted } from './trace-words.ts';

/** Every view seen square, from far off. */
const SQUARE: Eyes = {};

/** The drawing laid on the photos as their cameras saw the car, at every depth. */
export class AsSeen {
  readonly #openLayout: OpenLayout;
  readonly #measuring: Measuring;
  readonly #trace: Trace;
  /** By its button; a key that is held shows the other of the two for as long. */
  switched = $state(false);
  held = $state(false);
  wanted = $derived(this.switched !== this.held);
  /** What cannot be seen so yet is drawn square. */
  eyes: Eyes = $derived.by(() => {
    if (!this.wanted || !this.#trace.open) return SQUARE;
    const eyes: Eyes = {};
    for (const view of VIEWS) {
      const photo = this.#photoIn(view);
      const eye = photo && this.#eyeOf(photo);
      if (eye) eyes[view] = eye;
    }
    return eyes;
  });
  /** Whether there is a photo on the board that it could be laid on. */
  offered = $derived.by(() => this.#trace.open && this.#trace.photo?.shown === true);
  /** How the photo that is worked at was taken, or what is still wanted for it; one or two short sentences. */
  says: { readonly words: string; readonly lacking: boolean } | undefined = $derived.by(() => {
    const { photo, trouble } = this.#trace;
    if (!this.wanted || !photo) return undefined;
    const eye = this.#eyeOf(photo);
    const plane = planeOf(photo);
    if (!eye || !plane.ok) {
      if (trouble) return { words: trouble, lacking: true };
      const wanted = stillWanted(photo);
      if (wanted === '')
        return { words: 'The photo lies as it was taken while this step is open.', lacking: true };
      return {
        words: `The board cannot tell yet what the camera saw. It still needs ${wanted}.`,
        lacking: true,
      };
    }
    const stance = stanceOf(photo, plane.value);
    const off = stance ? `, ${formatDegrees(toDegrees(stance.offSquare), 0)} off square` : '';
    const far = formatSpan(Math.abs(eye.distance), this.#openLayout.settings.unit);
    const by = photo.distance === undefined ? ' by its own file' : '';
    return { words: `As the camera saw it from ${far}${by}${off}.`, lacking: false };
  });

  /** As the adjustment of all photos and the tape has them, by their photo; of a photo that is not adjusted there is none. */
  #cameras: ReadonlyMap<number, Float64Array> = $derived.by(() =>
    adjustedCameras(this.#trace.photos, this.#measuring.found?.clean.furtherUnknowns ?? []),
  );

  constructor(openLayout: OpenLayout, measuring: Measuring, trace: Trace) {
    this.#openLayout = openLayout;
    this.#measuring = measuring;
    this.#trace = trace;
  }

  /** Of several photos in a view the one that is worked at, else the one on top. */
  #photoIn(view: View): Photo | undefined {
    const { photo, photos } = this.#trace;
    const shown = photos.filter((each) => each.view === view && each.shown);
    return shown.find((each) => each === photo) ?? shown.find(({ front }) => front) ?? shown.at(-1);
  }

  #eyeOf(photo: Photo): Eye | undefined {
    const plane = planeOf(photo);
    if (!plane.ok || stillWanted(photo) !== '' || this.#trace.planeShown(photo) !== plane.value)
      return undefined;
    const camera = this.#cameras.get(this.#trace.photos.indexOf(photo));
    return adjustedEye(photo, camera) ?? eyeOf(photo, plane.value);
  }
}

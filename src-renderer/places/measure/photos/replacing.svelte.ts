import type { Photo } from '../../../../shared-math/layout/index.ts';
import { shownText } from '../../../../shared-math/outside/index.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import { takeIn } from './incoming-picture.ts';
import { fitOf, isMarkedOn, type OtherPicture, withMarksKept, withoutMarks } from './replaced-photo.ts';
import type { Trace } from './trace.svelte.ts';

/** A picture that does not simply take the other's place: what is asked about it. */
export interface Asked {
  readonly photo: Photo;
  readonly other: OtherPicture;
  /** One sentence or two. */
  readonly words: string;
  /** Whether what was marked on the old picture could go along. */
  readonly canKeep: boolean;
}

const px = ([width, height]: readonly [number, number]) => `${width} by ${height} pixels`;

/** Another picture for a photo on the board: a better shot of the same, or another page of the same drawing. */
export class Replacing {
  readonly #openLayout: OpenLayout;
  readonly #trace: Trace;
  asked: Asked | null = $state.raw(null);
  /** What is being read, for as long as it takes. */
  reading = $state('');

  constructor(openLayout: OpenLayout, trace: Trace) {
    this.#openLayout = openLayout;
    this.#trace = trace;
  }

  /** A file in the place of a photo's own. Marks go along where the shape is the same; where it is another it is asked. */
  async replace(photo: Photo, file: File): Promise<void> {
    this.asked = null;
    this.reading = file.name;
    const incoming = await takeIn(file, this.#trace.pictures);
    this.reading = '';
    if (!incoming.ok) {
      this.#openLayout.tell(incoming.failure);
      return;
    }
    const other = { ...incoming.value, page: 1 };
    const fit = fitOf(photo.size, other.size);
    if (fit === 'other' && isMarkedOn(photo)) {
      this.asked = {
        photo,
        other,
        words: `${shownText(other.name)} has another shape, ${px(other.size)} instead of ${px(photo.size)}: what was marked on the old picture does not fit it.`,
        canKeep: false,
      };
      return;
    }
    const taken = this.#take(
      photo,
      fit === 'other' ? withoutMarks(photo, other) : withMarksKept(photo, other),
    );
    if (taken && fit !== 'other' && isMarkedOn(photo))
      this.#openLayout.tell(
        fit === 'same'
          ? 'The marks are kept where they were: see that they still lie right.'
          : 'The marks are kept, to the new size: see that they still lie right.',
      );
  }

  /** Another page of the same file. */
  async turnTo(photo: Photo, page: number): Promise<void> {
    this.asked = null;
    this.reading = `page ${page}`;
    const drawn = await this.#trace.pictures.want({ hash: photo.hash, page });
    this.reading = '';
    if (!drawn.ok) {
      this.#openLayout.tell(`Page ${page} is not shown: ${drawn.failure}.`);
      return;
    }
    const other = { hash: photo.hash, name: photo.name, page, size: drawn.value };
    if (!isMarkedOn(photo)) {
      this.#take(photo, withoutMarks(photo, other));
      return;
    }
    this.asked = {
      photo,
      other,
      words: `Page ${page} is another drawing than the one that you marked.`,
      canKeep: fitOf(photo.size, other.size) !== 'other',
    };
  }

  /** What was asked is answered: the other picture, with the marks of the old one or without. */
  answer(keep: boolean): void {
    const { asked } = this;
    this.asked = null;
    if (asked) this.#take(asked.photo, (keep ? withMarksKept : withoutMarks)(asked.photo, asked.other));
  }

  leave(): void {
    this.asked = null;
  }

  #take(photo: Photo, next: Photo): boolean {
    const { document, edits } = this.#openLayout;
    // Taken off the board, or changed, while the other one was being read.
    if (!document?.photos.includes(photo)) {
      this.#openLayout.tell('The photo was changed meanwhile: its picture stays as it is.');
      return false;
    }
    const label =
      next.hash === photo.hash
        ? `Turn to page ${next.page ?? 1} of ${shownText(photo.name)}`
        : `Replace ${shownText(photo.name)}`;
    this.#trace.use(null);
    const photos = document.photos.map((each) => (each === photo ? next : each));
    const taken = edits.change(label, { ...document, photos });
    if (!taken) this.#openLayout.tell(`Not taken: ${edits.refusal}.`);
    else this.#trace.look();
    return taken;
  }
}

import type { Request } from '../../../src-main/api/contract.ts';
import { placeOf, type VariantSummary } from '../../document/find.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { OutputJob } from '../../document/output-job.svelte.ts';
import { RIDE_HEIGHT } from '../../document/reach.ts';
import type { OutgoingFile, Shop } from '../../document/shop.svelte.ts';
import { deliver } from '../../host/outputs.ts';
import { OutputPreview } from './output-preview.svelte.ts';
import {
  type CurveDrawn,
  type DataKind,
  type DrawnFormat,
  type Filmed,
  type FilmSeconds,
  type FilmWidth,
  formatChoices,
  type GoingOut,
  type NumbersWritten,
  type Paper,
  ROOM_VIEWS,
  type RoomShown,
  sizeWords,
  type ViewDrawn,
} from './sheet-words.ts';

type OutputRequest = Request<'output.start'>['wish'];

const PAPER_KEY = 'toeboard-paper';

/** Documents are never changed, so a number for each tells whether it is another. */
const numbers = new WeakMap<object, number>();
let lastNumber = 0;
function numberOf(document: object): number {
  let number = numbers.get(document);
  if (number === undefined) {
    lastNumber += 1;
    number = lastNumber;
    numbers.set(document, number);
  }
  return number;
}

/** The paper chosen last in this window. */
function paperBefore(): Paper | null {
  const paper = sessionStorage.getItem(PAPER_KEY);
  return paper === 'letter' || paper === 'a4' ? paper : null;
}

/** How the last file ended, for the person to read. */
export interface Ended {
  readonly good: boolean;
  readonly words: string;
}

/** What is to leave the board, how far it has come, and where it went. */
export class Outgoing {
  readonly #openLayout: OpenLayout;
  readonly #shop: Shop;
  readonly #handOver: (file: OutgoingFile) => void;
  readonly preview: OutputPreview;

  chosen: GoingOut = $state('sheet');
  view: ViewDrawn = $state('side');
  curve: CurveDrawn = $state('curves');
  data: DataKind = $state('points');
  /** From where a pictorial is seen: degrees from ahead toward the car's left. */
  seenFrom = $state('45');
  /** Parts of which the build sheet and drawings show the room that they need. */
  rooms: RoomShown[] = $state([]);
  filmed: Filmed = $state('bump');
  filmWidth: FilmWidth = $state(480);
  filmSeconds: FilmSeconds = $state(4);
  #beside = $state('');
  /** How a table writes its figures. */
  numbers: NumbersWritten = $state('data');
  /** Draws the car as it stands on the board, in place of ride height. */
  inPose = $state(false);
  #format: DrawnFormat = $state('dxf');
  #curveFormat: DrawnFormat = $state('svg');
  #paper: Paper | null = $state(paperBefore());

  /** The file being made, while it is. */
  job: OutputJob | null = $state.raw(null);
  ended: Ended | null = $state.raw(null);

  constructor(openLayout: OpenLayout, shop: Shop, handOver: (file: OutgoingFile) => void) {
    this.#openLayout = openLayout;
    this.#shop = shop;
    this.#handOver = handOver;
    this.preview = new OutputPreview(openLayout.call);
  }

  /** Who measures in millimetres has A4 in the printer, unless another is chosen. */
  get paper(): Paper {
    return this.#paper ?? (this.#openLayout.settings.unit === 'mm' ? 'a4' : 'letter');
  }
  set paper(paper: Paper) {
    this.#paper = paper;
    sessionStorage.setItem(PAPER_KEY, paper);
  }

  /** The other variants of the car, of which one can be shown beside this one. */
  get others(): readonly VariantSummary[] {
    const { variant } = this.#openLayout;
    if (!variant) return [];
    const place = placeOf(this.#shop.customers, variant.id);
    return place?.car.variants.filter(({ id }) => id !== variant.id) ?? [];
  }

  /** The variant that is shown beside this one; empty if it stands alone. */
  get beside(): string {
    return this.others.some(({ id }) => id === this.#beside) ? this.#beside : '';
  }
  set beside(id: string) {
    this.#beside = id;
  }

  /** Whether what is chosen can show another variant beside this one. */
  get showsBoth(): boolean {
    return this.chosen === 'customer' || this.chosen === 'moving' || this.chosen === 'film';
  }

  /** Whether what is chosen can show the room that parts need. */
  get showsRooms(): boolean {
    return this.chosen === 'sheet' || (this.chosen === 'drawing' && ROOM_VIEWS.has(this.view));
  }

  get format(): DrawnFormat {
    const curves = this.chosen === 'curves';
    const wished = curves ? this.#curveFormat : this.#format;
    const choices = formatChoices(curves ? this.curve : this.view);
    return choices.some(([format]) => format === wished) ? wished : (choices[0]?.[0] ?? 'svg');
  }
  set format(format: DrawnFormat) {
    if (this.chosen === 'curves') this.#curveFormat = format;
    else this.#format = format;
  }

  /** What the host is asked for; nothing for documents, which are exported as they always were. */
  get wish(): OutputRequest | undefined {
    switch (this.chosen) {
      case 'drawing': {
        const pose = this.inPose && this.view !== 'templates' ? this.#openLayout.carPose.pose : RIDE_HEIGHT;
        const { heave, roll, handwheel, braking } = pose;
        const rooms = this.#wishedRooms;
        const seen = this.view === 'pictorial' ? { turn: Number(this.seenFrom) } : {};
        return {
          kind: 'drawing',
          view: this.view,
          format: this.format,
          heave,
          roll,
          handwheel,
          braking,
          ...seen,
          ...rooms,
        };
      }
      case 'curves':
        return { kind: 'drawing', view: this.curve, format: this.format };
      case 'data':
        return this.data === 'layout' || this.data === 'car'
          ? undefined
          : { kind: 'table', table: this.data, numbers: this.numbers };
      case 'moving':
        return { kind: 'moving' };
      case 'film':
        return { kind: 'film', over: this.filmed, width: this.filmWidth, seconds: this.filmSeconds };
      default:
        return {
          kind: 'print',
          print: this.chosen,
          paper: this.paper,
          ...this.#wishedRooms,
        };
    }
  }

  get #wishedRooms(): { rooms?: RoomShown[] } {
    return this.showsRooms && this.rooms.length > 0 ? { rooms: [...this.rooms] } : {};
  }

  #request(wish: OutputRequest): Request<'output.start'> | undefined {
    const { variant, settings } = this.#openLayout;
    if (!variant) return undefined;
    const beside = this.showsBoth && this.beside !== '' ? { beside: this.beside } : {};
    return { id: variant.id, wish, unit: settings.unit, fraction: settings.fraction, ...beside };
  }

  /** What the preview is to show, and what it depends on; undefined while that is still on its way into the store. */
  get seen(): { asked: Request<'output.start'> | undefined; key: string } | undefined {
    const { document, settings, saved } = this.#openLayout;
    const wish = this.wish;
    const inSpace = wish?.kind === 'drawing' && (wish.view === '3d' || wish.view === 'templates');
    const asked = wish && !inSpace ? this.#request(wish) : undefined;
    if (!asked || !document) return { asked: undefined, key: '' };
    // A picture now would be of the layout as it was before.
    if (saved !== 'saved') return undefined;
    const kind = this.chosen === 'data' ? this.data : this.chosen;
    // The format changes the file, not the picture of it.
    const what = wish?.kind === 'drawing' ? { ...asked, wish: { ...wish, format: 'svg' } } : asked;
    return {
      asked: what as Request<'output.start'>,
      key: `${kind}|${numberOf(document)} ${JSON.stringify([what, settings.limits, settings.drawnBy])}`,
    };
  }

  /** Makes the file and brings it to the person. */
  async make(): Promise<void> {
    if (this.job) return;
    this.ended = null;
    const job = new OutputJob(this.#openLayout.call);
    this.job = job;
    try {
      this.ended = await this.#made(job);
    } finally {
      this.job = null;
    }
  }

  async #made(job: OutputJob): Promise<Ended | null> {
    await this.#openLayout.saving.flush();
    if (this.#openLayout.saving.pending)
      return { good: false, words: 'Not made: the last changes of this layout are not in the store yet.' };
    const wish = this.wish;
    if (!wish) return this.#exported();
    const request = this.#request(wish);
    if (!request) return null;
    const status = await job.run(request);
    if (status.state === 'called-off') return { good: true, words: 'Cancelled. Nothing was written.' };
    if (status.state !== 'ready' || !status.file)
      return { good: false, words: `Not made: ${status.reason}.` };
    const delivered = await deliver(job.id, status.file.fileName);
    if (!delivered.ok) return { good: false, words: `Not written: ${delivered.failure}.` };
    const size = sizeWords(status.file.bytes);
    if (delivered.value.to === 'nowhere')
      return { good: true, words: 'Made, and not kept: no place was chosen.' };
    return delivered.value.to === 'disk'
      ? { good: true, words: `Written to ${delivered.value.path} (${size}).` }
      : {
          good: true,
          words: `${status.file.fileName} (${size}) is with the browser: look in its downloads.`,
        };
  }

  async #exported(): Promise<Ended | null> {
    const { variant } = this.#openLayout;
    if (!variant) return null;
    const file = await (this.data === 'car'
      ? this.#shop.exported('car', variant.carId)
      : this.#shop.exported('variant', variant.id));
    if (!file) return null;
    this.#handOver(file);
    return { good: true, words: `${file.fileName} is on its way: look in the downloads.` };
  }
}

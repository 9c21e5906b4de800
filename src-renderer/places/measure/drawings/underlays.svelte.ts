import type { View, ViewPoint } from '../../../../shared-math/drawing/index.ts';
import { project, VIEW_AXES } from '../../../../shared-math/drawing/index.ts';
import { UNDERLAYS_MAX, type Underlay } from '../../../../shared-math/layout/index.ts';
import { failed, type Outcome } from '../../../../shared-math/outcome.ts';
import { shownText } from '../../../../shared-math/outside/index.ts';
import {
  DRAWING_TEXT_MAX,
  type DrawingOutcome,
  type DrawingSpot,
  type DrawnLayer,
  drawingKind,
  KIND_BYTES,
  nearestLine,
  PIXEL,
  placeByTwo,
  placeInView,
  type ReadDrawing,
  SnapIndex,
  spotInDrawing,
  underlayTransform,
} from '../../../../shared-math/underlay/index.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import { fetchPhoto, sendDrawing } from '../../../host/photos.ts';
import { JobClient, type WorkerLine } from '../../../jobs/job-client.ts';
import { bodyDepth, bodyToTrace, type Outlined, withOutlined } from '../photos/trace-bodies.ts';
import { pointsOfLine } from './taken-line.ts';
import { contentWords, leftWords, UNDER_WORDS } from './underlay-words.ts';

/** A drawing's lines, once they are read; or why they are not, to end a sentence. */
export type Loaded = DrawingOutcome;

/** What a click on the board is for. */
export type UnderlayTool = 'first' | 'second' | 'take' | null;

/** A spot of the drawing that was clicked, and the point that it shows. */
interface Known {
  readonly spot: DrawingSpot;
  readonly point: string;
}

const NO_LAYERS: readonly DrawnLayer[] = [];

/** The drawings under the views: their lines by hash, where they lie, and what is done with them. */
export class Underlays {
  readonly #openLayout: OpenLayout;
  readonly #client: JobClient;
  readonly #asked = new Set<string>();
  readonly #indices = new Map<string, SnapIndex>();

  /** By hash; absent while it is on its way. */
  loaded: ReadonlyMap<string, Loaded> = $state.raw(new Map());
  chosen = $state(0);
  tool: UnderlayTool = $state(null);
  /** Which point the next click shows. */
  asked = $state('');
  first: Known | null = $state.raw(null);
  /** What a picked line becomes, and where it stands along the view; null, at a usual place. */
  becomes: Outlined = $state('rail');
  depth: number | null = $state(null);
  busy = $state(false);
  chooseFiles: () => void = () => {};

  constructor(openLayout: OpenLayout, start: () => WorkerLine) {
    this.#openLayout = openLayout;
    this.#client = new JobClient(start);
  }

  get all(): readonly Underlay[] {
    return this.#openLayout.document?.underlays ?? [];
  }

  get underlay(): Underlay | undefined {
    return this.all[this.chosen] ?? this.all[0];
  }

  #at(): number {
    return this.all[this.chosen] ? this.chosen : 0;
  }

  drawingOf({ hash }: Underlay): ReadDrawing | undefined {
    const loaded = this.loaded.get(hash);
    return loaded?.ok ? loaded.value : undefined;
  }

  /** The layers that are turned on. */
  layersOf(underlay: Underlay): readonly DrawnLayer[] {
    const drawing = this.drawingOf(underlay);
    if (!drawing) return NO_LAYERS;
    return drawing.layers.filter(({ name }) => !underlay.layersOff.includes(name));
  }

  /** Reads the drawings that the open layout names. Called once, where effects may be made. */
  follow(): void {
    for (const { hash } of this.all) {
      if (this.#asked.has(hash)) continue;
      this.#asked.add(hash);
      void this.#load(hash);
    }
  }

  async #load(hash: string): Promise<void> {
    const file = await fetchPhoto(hash);
    this.#keep(hash, file.ok ? await this.#read(await file.value.text()) : file);
    // What could not be fetched may be there another time.
    if (!file.ok) this.#asked.delete(hash);
  }

  #keep(hash: string, loaded: Loaded): void {
    this.loaded = new Map([...this.loaded, [hash, loaded]]);
  }

  #read(text: string): Promise<Loaded> {
    return new Promise((resolve) => {
      this.#client.begin<string, never, Loaded>('drawing', text, {
        answer: resolve,
        broken: (reason) => resolve(failed(reason)),
      });
    });
  }

  // Bringing in, and taking away -----------------------------------------------------------------------------

  async bring(files: readonly File[]): Promise<void> {
    this.busy = true;
    try {
      for (const file of files) {
        const trouble = await this.#bringOne(file);
        if (trouble) this.#openLayout.tell(`${shownText(file.name)}: ${trouble}.`);
      }
    } finally {
      this.busy = false;
    }
  }

  /** Returns why a file was not taken. */
  async #bringOne(file: File): Promise<string | undefined> {
    const { document } = this.#openLayout;
    if (!document) return 'there is no layout on the board to lay it under';
    if (this.all.length >= UNDERLAYS_MAX) return `${UNDERLAYS_MAX} drawings lie under this layout already`;
    if (file.size > DRAWING_TEXT_MAX) return `it is larger than ${DRAWING_TEXT_MAX / 1e6} million bytes`;
    let text: string;
    try {
      text = await file.text();
    } catch {
      return 'it cannot be read';
    }
    const kind = drawingKind(text.slice(0, KIND_BYTES));
    if (!kind.ok) return kind.failure;
    const read = await this.#read(text);
    if (!read.ok) return read.failure;
    const sent = await sendDrawing(file);
    if (!sent.ok) return sent.failure;
    const { hash } = sent.value;
    this.#asked.add(hash);
    this.#keep(hash, read);
    const drawing = read.value;
    const view = this.#openLayout.enlargedView ?? this.#openLayout.lastView;
    const underlay: Underlay = {
      view,
      hash,
      name: shownText(file.name.replace(/\.(dxf|svg)$/i, '')).trim() || 'drawing',
      unit: drawing.unit ?? (kind.value === 'svg' ? PIXEL : 1),
      unitFrom: drawing.unit === undefined ? 'assumed' : 'file',
      turn: 0,
      at: [0, 0],
      shown: true,
      layersOff: drawing.layers.filter(({ shown }) => !shown).map(({ name }) => name),
    };
    const now = this.#openLayout.document;
    if (!now) return 'the layout was closed meanwhile';
    const underlays = [...(now.underlays ?? []), underlay];
    if (!this.#openLayout.edits.change(`Lay ${underlay.name} under`, { ...now, underlays }))
      return this.#openLayout.edits.refusal;
    this.chosen = underlays.length - 1;
    const left = leftWords(drawing);
    const unit =
      underlay.unitFrom === 'file'
        ? ''
        : ` The file names no unit: ${kind.value === 'svg' ? '96 to the inch' : 'millimetres'} assumed; set it at the right.`;
    this.#openLayout.tell(
      `${underlay.name} lies ${UNDER_WORDS[view]}: ${contentWords(drawing)}${left ? `; ${left}` : ''}.${unit}`,
    );
    return undefined;
  }

  remove(): void {
    const { document, edits } = this.#openLayout;
    const gone = this.underlay;
    if (!document || !gone) return;
    const underlays = this.all.filter((each) => each !== gone);
    this.use(null);
    edits.change(`Remove ${gone.name}`, { ...document, underlays });
  }

  /** Changes the chosen drawing; true if it was taken. */
  change(label: string, over: Partial<Underlay>, merge?: string): boolean {
    const { document, edits } = this.#openLayout;
    const { underlay } = this;
    if (!document || !underlay) return false;
    const underlays = this.all.with(this.#at(), { ...underlay, ...over });
    return edits.change(label, { ...document, underlays }, merge);
  }

  setLayer(name: string, on: boolean): void {
    const off = this.underlay?.layersOff ?? [];
    this.change(`Turn a layer ${on ? 'on' : 'off'}`, {
      layersOff: on ? off.filter((each) => each !== name) : [...off, name],
    });
  }

  // Tools ----------------------------------------------------------------------------------------------------

  use(tool: UnderlayTool): void {
    this.tool = tool;
    if (tool === null || tool === 'first') this.first = null;
    if (tool === 'first' || tool === 'take') {
      const view = this.underlay?.view;
      if (view && this.#openLayout.enlarged !== view && this.#openLayout.enlarged !== null)
        this.#openLayout.enlarge(view);
    }
    if (tool === 'first') this.asked = this.#openLayout.points[0]?.id ?? '';
  }

  /** A click in the view of the chosen drawing, right and down in its plane, mm; `reach` is how far a finger is off. */
  click(place: ViewPoint, reach: number): void {
    const { underlay, tool } = this;
    if (!underlay || !tool) return;
    if (tool === 'take') {
      this.#take(underlay, place, reach);
      return;
    }
    const near = this.#indexOf(underlay)?.nearest(place, reach)?.place ?? place;
    const known: Known = { spot: spotInDrawing(underlay, near), point: this.asked };
    if (tool === 'first') {
      this.first = known;
      this.tool = 'second';
      this.asked =
        this.#openLayout.points.find(({ id, twin }) => id !== known.point && twin !== known.point)?.id ?? '';
      return;
    }
    this.#placeByTwo(underlay, known);
  }

  #placeByTwo(underlay: Underlay, second: Known): void {
    const { first } = this;
    const at = (id: string) => this.#openLayout.points.find((point) => point.id === id)?.at;
    const [a, b] = [first && at(first.point), at(second.point)];
    if (!first || !a || !b) return;
    const placed = placeByTwo(
      { spot: first.spot, place: project(underlay.view, a) },
      { spot: second.spot, place: project(underlay.view, b) },
      underlay.flipped ?? false,
    );
    if (!placed.ok) {
      this.#openLayout.tell(`Not placed: ${placed.failure}.`);
      return;
    }
    const { unit, turn, at: origin } = placed.value;
    if (this.change('Place a drawing by two points', { unit, turn, at: origin, unitFrom: 'points' }))
      this.use(null);
  }

  /** Where a picked line would stand along the view: as typed, or at a usual place. */
  get takenDepth(): number {
    const { document } = this.#openLayout;
    const { underlay } = this;
    if (this.depth !== null || !document || !underlay) return this.depth ?? 0;
    return bodyDepth(bodyToTrace(document, this.becomes, undefined), underlay.view);
  }

  #take(underlay: Underlay, place: ViewPoint, reach: number): void {
    const { document, edits } = this.#openLayout;
    if (!document) return;
    const to = (x: number, y: number) => placeInView(underlay, [x, y]);
    const line = nearestLine(this.layersOf(underlay), to, place, reach);
    if (!line) {
      this.#openLayout.tell('There is no line of the drawing at that spot.');
      return;
    }
    const places: ViewPoint[] = [];
    for (let i = 0; i + 1 < line.points.length; i += 2)
      places.push(to(line.points[i] as number, line.points[i + 1] as number));
    const points = pointsOfLine(this.becomes, places, line.closed, underlay.view, this.takenDepth);
    if (!points.ok) {
      this.#openLayout.tell(`Not taken: ${points.failure}.`);
      return;
    }
    const taken = withOutlined(document, this.becomes, undefined, points.value, underlay.view);
    if (edits.change(`Copy ${taken.name} from a drawing`, taken.document)) {
      this.#openLayout.selection = taken.id;
      this.#openLayout.tell(
        `${taken.name} is on the board, ${this.depth === null ? 'at a usual place' : 'where you typed'} along ${['the car', 'its width', 'its height'][VIEW_AXES[underlay.view].toward.axis]}.`,
      );
    }
  }

  // Drawn to -------------------------------------------------------------------------------------------------

  #indexOf(underlay: Underlay): SnapIndex | undefined {
    const layers = this.layersOf(underlay);
    if (layers.length === 0) return undefined;
    const key = `${underlay.hash} ${underlay.layersOff.join('\n')} ${underlayTransform(underlay).join()}`;
    let index = this.#indices.get(key);
    if (!index) {
      index = new SnapIndex(layers, (x, y) => placeInView(underlay, [x, y]));
      if (this.#indices.size > 2 * UNDERLAYS_MAX) this.#indices.clear();
      this.#indices.set(key, index);
    }
    return index;
  }

  /** The spot of a drawing that draws a place of a view to itself; undefined if there is none within the reach, mm. */
  drawnTo(view: View, place: ViewPoint, reach: number): ViewPoint | undefined {
    let best: ViewPoint | undefined;
    let least = reach;
    for (const underlay of this.all) {
      if (underlay.view !== view || !underlay.shown) continue;
      const spot = this.#indexOf(underlay)?.nearest(place, least);
      if (!spot) continue;
      best = spot.place;
      least = Math.hypot(best[0] - place[0], best[1] - place[1]);
    }
    return best;
  }

  /** Takes a typed figure of the chosen drawing's place. */
  takeFigure(key: 'unit' | 'turn' | 'right' | 'up', value: number): Outcome<number, string> {
    const { underlay } = this;
    if (!underlay) return failed('no drawing is chosen');
    const [right, up] = underlay.at;
    const over: Partial<Underlay> =
      key === 'unit'
        ? { unit: value, unitFrom: 'typed' }
        : key === 'turn'
          ? { turn: value }
          : { at: key === 'right' ? [value, up] : [right, value] };
    return this.change('Place a drawing', over)
      ? { ok: true, value }
      : failed(this.#openLayout.edits.refusal);
  }
}

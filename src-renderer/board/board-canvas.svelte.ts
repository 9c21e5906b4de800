import { untrack } from 'svelte';
import {
  placeAtRide,
  placeInPose,
  project,
  roomFor,
  VIEW_AXES,
  type View,
} from '../../shared-math/drawing/index.ts';
import { limitInForce } from '../../shared-math/findings/index.ts';
import { bodyAt, bodyName, bodyOfPart, type Point } from '../../shared-math/layout/index.ts';
import { carryPoint } from '../../shared-math/linkage/index.ts';
import { formatLength, type LengthStyle } from '../../shared-math/units/index.ts';
import { directionOf } from '../document/directions.ts';
import { standPoints } from '../document/stand.ts';
import type { Workbench } from '../document/workbench.svelte.ts';
import type { Comparison } from '../panels/compare/comparison.svelte.ts';
import type { Studies } from '../places/layout/studies.svelte.ts';
import { studiesCanvas } from '../places/layout/studies-canvas.svelte.ts';
import type { AxlePull } from '../places/road/axle-pull.svelte.ts';
import { roadCanvas } from '../places/road/road-canvas.svelte.ts';
import type { RoadRun } from '../places/road/road-run.svelte.ts';
import { shaftPicture } from '../places/shaft/shaft-marks.ts';
import { turnPicture } from '../places/turn/turn-marks.ts';
import { BoardStage } from './board-stage.ts';
import type { BoardView } from './board-view.svelte.ts';
import { nameSpot } from './body-spots.ts';
import { gapDimension } from './gap-dimension.ts';
import { gridSteps } from './grid.ts';
import { gridPicture } from './grid-painter.ts';
import { readPalette } from './inks.ts';
import { NotePlacing, segmentsOf } from './note-placing.ts';
import {
  arcMarks,
  arcNotes,
  handlesOf,
  notesOf,
  type OverlaySource,
  projectionLines,
  snapLines,
} from './overlay-picture.ts';
import { offerTestHook } from './test-hook.ts';

/** Milliseconds of rest after which labels look for better room. */
const SETTLES_AFTER = 160;

/** Sixteenths are too coarse for a gap between arcs. */
function fineStyle(style: LengthStyle): LengthStyle {
  return style.fraction === 16 ? { ...style, fraction: 32 } : style;
}

/** Where a point is, by the two coordinates that a view shows: "34 1/4 in back · 16 in above". */
function whereIs(workbench: Workbench, at: Point, shown: View): string {
  const { right, down } = VIEW_AXES[shown];
  return [right.axis, down.axis]
    .map((axis) => {
      const way = directionOf(axis, at[axis]);
      return `${workbench.length(at[axis] * way.sign)} ${way.label.split(' ')[0]}`;
    })
    .join(' · ');
}

const shownOthers = (comparison: Comparison) => (comparison.ghosts ? comparison.others : []);

/** Seen from above, side steer and cross steer both show where they run. */
const namingView = (shown: readonly View[]): View => (shown.includes('top') ? 'top' : (shown[0] ?? 'side'));

/** Letters of a variant's name on the board. */
const NAME_MOST = 30;

/** The other variants on the board by letter and name, and where their pitman balls stand in a view. */
function otherNames(comparison: Comparison, view: View) {
  const at = new Float64Array(3);
  return shownOthers(comparison)
    .filter(({ state }) => state.status === 'ok')
    .map(({ id, letter, frontEnd, state }) => {
      carryPoint(frontEnd, state, 'pitman', frontEnd.layout.steering.box.pitmanBall, at);
      const name = comparison.nameOf(id);
      const short = name.length > NAME_MOST ? `${name.slice(0, NAME_MOST - 1).trimEnd()}…` : name;
      const ball: Point = [at[0] as number, at[1] as number, at[2] as number];
      return { view, at: project(view, ball), name: `${letter} ${short}` };
    });
}

/** The chosen and the hovered rail or obstacle, named in the view that was pointed at; one whose point is named is not. */
function namedBodies(workbench: Workbench, view: BoardView): OverlaySource['bodies'] {
  const { document, selection, hover, enlarged } = workbench;
  if (!document) return [];
  const wanted = [
    [selection, enlarged ?? workbench.lastView],
    [hover, enlarged ?? view.hoverView],
  ] as const;
  const named = new Map<string, OverlaySource['bodies'][number]>();
  for (const [id, shown] of wanted) {
    const body = id === null ? undefined : bodyAt(document, id);
    if (!body || body.id !== id || named.has(id)) continue;
    const at = nameSpot(view.bodies, id, shown);
    if (at) named.set(id, { id, view: shown, at, name: bodyName(body) });
  }
  return [...named.values()];
}

/** A structure without its rails, what is in the way and the steering shaft. */
const carStructure = (structure: string) => structure.replaceAll(/(rail|obstacle|shaft)-\S+ ?/g, '');

/** What the travel says on the board: the two arcs, the gap between them, the aim. */
const travelled = (source: OverlaySource) => ({ ...arcMarks(source), notes: arcNotes(source) });

/** A drive has nothing to say that would not move too fast to read: its figures stand beside its curves. */
const NOTHING_ABOUT = { lines: [], marks: [], notes: [] };

/** Calls back whenever the window comes to a screen of another density; stops when what it gives back is called. */
function onDensityChange(tell: () => void): () => void {
  let query: MediaQueryList | undefined;
  const changed = () => {
    watch();
    tell();
  };
  const watch = () => {
    query?.removeEventListener('change', changed);
    query = window.matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`);
    query.addEventListener('change', changed);
  };
  watch();
  return () => query?.removeEventListener('change', changed);
}

/**
 * An attachment that puts the canvas into an element and keeps it showing the workbench. Nodes are made once for a
 * structure; after that every effect only writes into what is there.
 */
export function boardCanvas(
  workbench: Workbench,
  view: BoardView,
  comparison: Comparison,
  studies: Studies,
  road: RoadRun,
  axlePull: AxlePull,
  colours: () => readonly string[],
) {
  return (element: HTMLDivElement) => {
    const stage = new BoardStage(element, readPalette(element));
    const notes = new NotePlacing();
    let placed: Float64Array = new Float64Array(0);
    let placedAtRide: Float64Array = new Float64Array(0);
    let settling: ReturnType<typeof setTimeout> | undefined;
    let settled = $state(0);
    let fittedTo = '';
    let texts: readonly string[] = [];

    const roomed = (room: Float64Array) =>
      room.length === 3 * view.drawing.points.length ? room : roomFor(view.drawing);
    const settle = () => {
      notes.unsettle();
      settled += 1;
    };

    const fill = () => {
      const size = { width: element.clientWidth, height: element.clientHeight };
      if (size.width === 0 || size.height === 0) return;
      // Type, and with it lines and margins, grow with the window.
      const palette = readPalette(element);
      view.weight = palette.weight;
      stage.ink(palette);
      stage.resize(size);
      view.resize(size);
      settle();
    };
    const observer = new ResizeObserver(fill);
    observer.observe(element);
    const stopWatching = onDensityChange(fill);
    void document.fonts.ready.then(() => {
      stage.typeCame();
      settle();
    });

    // A new variant or another kind of axle: new nodes, a new sheet, wholly in sight.
    $effect(() => {
      void view.structure;
      void workbench.variant?.id;
      untrack(() => {
        placedAtRide = roomed(placedAtRide);
        placeAtRide(view.drawing, placedAtRide);
        stage.build(view.drawing, placedAtRide);
        // One more thing in the way of the same car leaves the sheet as it is looked at.
        const car = `${workbench.variant?.id} ${carStructure(view.structure)}`;
        if (car === fittedTo) view.makeRoom();
        else {
          view.arrange();
          view.fit(false);
        }
        fittedTo = car;
      });
    });

    // The grid of another unit wants the views at other distances.
    $effect(() => {
      void workbench.settings.unit;
      untrack(() => view.arrange());
    });

    $effect(() => {
      const { drawing } = view;
      const { frontEnd, poseState, stand } = workbench;
      placed = roomed(placed);
      if (poseState.status === 'ok') placeInPose(drawing, frontEnd, poseState, placed);
      else placeAtRide(drawing, placed);
      standPoints(placed, stand);
      stage.carNodes.update(drawing, placed);
    });

    const driven = roadCanvas(stage, view, workbench, comparison, road, axlePull);

    $effect(() => {
      const shown = !workbench.atRide && !driven.onRoad();
      stage.showGhost(shown);
      if (!shown) return;
      placedAtRide = roomed(placedAtRide);
      placeAtRide(view.drawing, placedAtRide);
      stage.ghostNodes.update(view.drawing, placedAtRide);
    });

    const turned = ({ shown, onBoard }: OverlaySource) => ({
      ...turnPicture({
        frontEnd: workbench.frontEnd,
        state: workbench.poseState,
        shown,
        transmissionLeast: limitInForce('transmissionLeast', workbench.settings.limits).value,
        onBoard,
      }),
      marks: [],
    });

    const ABOUT = { travel: travelled, turn: turned, road: () => NOTHING_ABOUT };
    const studied = studiesCanvas(stage, view, workbench, studies, colours, settle);

    $effect(() => {
      stage.lookFrom(view.camera, view.sheet, view.shown);
      const steps = gridSteps(workbench.settings.unit, view.camera.scale / view.weight);
      stage.showGrid(
        gridPicture(steps, view.camera, view.size, view.sheet, workbench.enlarged, view.gridGaps),
      );
    });

    $effect(() => {
      const chosen = new Set([workbench.selection, workbench.hover]);
      const parts = untrack(() => view.drawing.parts);
      const bodies = new Set([workbench.chosenBody?.id, workbench.hover]);
      const between = workbench.shownGap?.parts ?? [];
      const stressed = parts.filter(
        (part) =>
          part.hardpoints.some((id) => chosen.has(id)) ||
          between.some((id) => part.id === id || part.id.startsWith(`${id}-`)) ||
          bodies.has(bodyOfPart(part.id)),
      );
      stage.stress(new Set(stressed.map((part) => part.id)));
    });

    // Whatever moves, labels go along; once it rests they look for room again.
    $effect(() => {
      void view.handles;
      clearTimeout(settling);
      settling = setTimeout(settle, SETTLES_AFTER);
    });

    $effect(() => {
      void settled;
      const source: OverlaySource = {
        shown: view.shown,
        handles: view.handles,
        points: workbench.points,
        chosen: workbench.selection,
        hovered: workbench.hover,
        hoverView: workbench.enlarged ?? view.hoverView,
        chosenView: workbench.enlarged ?? workbench.lastView,
        guides: view.guides,
        guideView: workbench.lastView,
        // Worked out only where they are shown.
        get arcs() {
          return view.arcs;
        },
        get gap() {
          return view.gap;
        },
        others: otherNames(comparison, namingView(view.shown)),
        bodies: namedBodies(workbench, view),
        bounds: { x: 4, y: 4, width: view.size.width - 8, height: view.size.height - 8 },
        scale: view.camera.scale,
        onBoard: (shown, place) => view.onBoard(shown, place),
        length: (mm) => workbench.length(mm),
        fineLength: (mm) => formatLength(mm, fineStyle(workbench.lengthStyle)),
        whereIs: (point, shown) => whereIs(workbench, point.at, shown),
      };
      const handles = handlesOf(source);
      const between = gapDimension({
        gap: workbench.shownGap,
        shown: view.shown,
        weight: view.weight,
        onBoard: source.onBoard,
        length: source.length,
      });
      // Below the board stand the curves of the travel, or of the turn; on it what belongs to them.
      const about = ABOUT[workbench.lookedAt](source);
      const arrows = studied.arrows(source);
      const shaft = shaftPicture({
        route: workbench.route,
        shown: view.shown,
        chosen: source.chosen,
        hovered: source.hovered,
        chosenView: source.chosenView,
        hoverView: source.hoverView,
        weight: view.weight,
        onBoard: source.onBoard,
      });
      const written = notes.place(
        [...between.notes, ...studied.notes(source), ...notesOf(source), ...shaft.notes, ...about.notes],
        (text, strong) => stage.measure(text, strong),
        () => ({
          bounds: source.bounds,
          rects: [
            ...handles.map(({ x, y }) => ({ x: x - 7, y: y - 7, width: 14, height: 14 })),
            ...arrows.rects,
          ],
          segments: view.shown.flatMap((shown) =>
            segmentsOf(stage.carNodes.linesOf(shown), (place) => view.onBoard(shown, place)),
          ),
        }),
      );
      texts = written.texts.map(({ text }) => text);
      stage.showOver({
        lines: [
          ...projectionLines(source),
          ...snapLines(source),
          ...shaft.lines,
          ...about.lines,
          ...written.lines,
          ...arrows.lines,
          ...between.lines,
          ...driven.handLines(),
        ],
        marks: [...about.marks, ...shaft.marks, ...between.marks],
        handles,
        texts: [...written.texts, ...arrows.texts],
      });
    });

    const withdraw = offerTestHook({
      handleAt: (shown, id) => {
        const handle = view.handles.find(({ point, view: of }) => point.id === id && of === shown);
        const box = element.getBoundingClientRect();
        return handle && { x: box.x + handle.x, y: box.y + handle.y };
      },
      otherAt: (letter) => {
        const names = otherNames(comparison, namingView(view.shown));
        const other = names.find(({ name }) => name.startsWith(`${letter} `));
        if (!other) return undefined;
        const [x, y] = view.onBoard(other.view, other.at);
        const box = element.getBoundingClientRect();
        return { x: box.x + x, y: box.y + y };
      },
      mapAt: (across, up) => {
        const { view: on, shown } = studies.map;
        if (!shown || !view.shown.includes(on)) return undefined;
        const [x, y] = view.onBoard(on, [on === 'side' ? -across : across, -up]);
        const box = element.getBoundingClientRect();
        return { x: box.x + x, y: box.y + y };
      },
      camera: () => view.camera,
      written: () => texts,
    });

    return () => {
      withdraw();
      clearTimeout(settling);
      observer.disconnect();
      stopWatching();
      stage.destroy();
    };
  };
}

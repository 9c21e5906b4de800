import { placeAtRide, roomFor, VIEW_AXES, type View } from '../../shared-math/drawing/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { bodyAt, bodyName, bodyOfPart } from '../../shared-math/layout/index.ts';
import { whenever } from '../controls/whenever.svelte.ts';
import { directionOf } from '../document/directions.ts';
import type { OpenLayout } from '../document/open-layout.svelte.ts';
import { pageGround } from '../look/ground.svelte.ts';
import { onceTypeCame } from '../look/type-came.ts';
import { BoardStage } from './board-stage.ts';
import type { BoardView } from './board-view.svelte.ts';
import { nameSpot } from './body-spots.ts';
import type { Contribution } from './contributor.ts';
import { gapDimension } from './gap-dimension.ts';
import { gridSteps } from './grid.ts';
import { gridPicture } from './grid-painter.ts';
import { readPalette } from './inks.ts';
import { NotePlacing, segmentsOf } from './note-placing.ts';
import {
  handlesOf,
  notesOf,
  numberBoxes,
  type OverlaySource,
  projectionLines,
  snapLines,
} from './overlay-picture.ts';
import { platesOver } from './plates.ts';
import { offerTestHook } from './test-hook.ts';

/** Milliseconds of rest after which labels look for better room. */
const SETTLES_AFTER = 160;

/** Where a point is, by the two coordinates that a view shows: "34 1/4 in back · 16 in above". */
function whereIs(openLayout: OpenLayout, at: Point, shown: View): string {
  const { right, down } = VIEW_AXES[shown];
  return [right.axis, down.axis]
    .map((axis) => {
      const way = directionOf(axis, at[axis]);
      return `${openLayout.length(at[axis] * way.sign)} ${way.label.split(' ')[0]}`;
    })
    .join(' · ');
}

/** The chosen and the hovered rail or obstacle, named in the view that was pointed at; one whose point is named is not. */
function namedBodies(openLayout: OpenLayout, view: BoardView): OverlaySource['bodies'] {
  const { document, selection, hover, enlargedView } = openLayout;
  if (!document) return [];
  const wanted = [
    [selection, enlargedView ?? openLayout.lastView],
    [hover, enlargedView ?? view.hoverView],
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

/** A structure without its rails, obstacles and the steering shaft. */
const carStructure = (structure: string) => structure.replaceAll(/(rail|obstacle|shaft)-\S+ ?/g, '');

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
 * An attachment that puts the canvas into an element and keeps it showing the open layout. Nodes are made once for a
 * structure; after that every effect only writes into what is there.
 */
export function boardCanvas(openLayout: OpenLayout, view: BoardView, contributions: readonly Contribution[]) {
  return (element: HTMLDivElement) => {
    const stage = new BoardStage(element, readPalette(element));
    const notes = new NotePlacing();
    let placedAtRide: Float64Array = new Float64Array(0);
    let settling: ReturnType<typeof setTimeout> | undefined;
    let settled = $state(0);
    let fittedTo = '';
    let texts: readonly string[] = [];

    const roomed = (room: Float64Array) =>
      room.length === 3 * view.drawing.points.length ? room : roomFor(view.drawing);
    const settle = () => {
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
    // The observer fills for the first time, when there are nodes to ink.
    let nightAtLast = pageGround.night;
    whenever(
      () => pageGround.night,
      (night) => {
        if (night !== nightAtLast) fill();
        nightAtLast = night;
      },
    );
    const stopWatching = onDensityChange(fill);
    const stopWaiting = onceTypeCame(() => {
      stage.typeCame();
      settle();
    });

    // A new variant or another kind of axle: new nodes, a new sheet, wholly in sight.
    whenever(
      () => [view.structure, openLayout.variant?.id],
      () => {
        placedAtRide = roomed(placedAtRide);
        placeAtRide(view.drawing, placedAtRide);
        stage.build(view.drawing, placedAtRide);
        // One more obstacle of the same car leaves the sheet as it is looked at.
        const car = `${openLayout.variant?.id} ${carStructure(view.structure)}`;
        if (car === fittedTo) view.makeRoom();
        else {
          view.arrange();
          view.fit(false);
        }
        fittedTo = car;
      },
    );

    // The grid of another unit wants the views at other distances.
    whenever(
      () => openLayout.settings.unit,
      () => view.arrange(),
    );

    $effect(() => {
      const { drawing, placed } = view.standing;
      stage.carNodes.seeFrom(view.eyes);
      stage.carNodes.update(drawing, placed);
    });

    /** The first answer that there is. */
    const first = <Answer>(ask: (each: Contribution) => Answer | undefined): Answer | undefined => {
      for (const each of contributions) {
        const answer = ask(each);
        if (answer !== undefined) return answer;
      }
      return undefined;
    };
    const ground = $derived(first((each) => each.ground?.()));
    $effect(() => stage.showRoad(ground));
    $effect(() => {
      const answers = contributions.map((each) => each.otherCars?.());
      stage.otherCars.show(answers.findLast((answer) => answer !== undefined) ?? [], view.eyes);
    });
    $effect(() => {
      const under = contributions.flatMap((each) => each.underlay?.() ?? []);
      stage.showUnder(
        under.length === 0
          ? undefined
          : (context, palette) => {
              for (const paint of under) paint(context, palette);
            },
      );
    });
    $effect(() => {
      const proposed = first((each) => each.proposed?.());
      stage.proposed.show(proposed?.frontEnd, proposed?.state, view.eyes, proposed?.links);
    });
    // What is written finds its room again once there is something new to keep off.
    for (const each of contributions)
      whenever(
        () => each.settles?.(),
        (settles) => {
          if (settles) settle();
        },
      );

    $effect(() => {
      const shown = !openLayout.carPose.atRide && !ground;
      stage.showGhost(shown);
      if (!shown) return;
      placedAtRide = roomed(placedAtRide);
      placeAtRide(view.drawing, placedAtRide);
      stage.ghostNodes.seeFrom(view.eyes);
      stage.ghostNodes.update(view.drawing, placedAtRide);
    });

    $effect(() => {
      stage.lookFrom(view.camera, view.sheet, view.shown);
      const steps = gridSteps(openLayout.settings.unit, view.camera.scale / view.weight);
      stage.showGrid(
        gridPicture(steps, view.camera, view.size, view.sheet, openLayout.enlarged, view.gridGaps),
      );
    });

    // Which parts they are goes by their names, and these are the same for as long as the structure is.
    whenever(
      () => ({
        structure: view.structure,
        chosen: new Set([openLayout.selection, openLayout.hover]),
        bodies: new Set([openLayout.chosenBody?.id, openLayout.hover]),
        between: openLayout.shownGap?.parts ?? [],
      }),
      ({ chosen, bodies, between }) => {
        const stressed = view.drawing.parts.filter(
          (part) =>
            part.hardpoints.some((id) => chosen.has(id)) ||
            between.some((id) => part.id === id || part.id.startsWith(`${id}-`)) ||
            bodies.has(bodyOfPart(part.id)),
        );
        stage.stress(new Set(stressed.map((part) => part.id)));
      },
    );

    // Whatever moves, labels go along; once it rests they look for room again.
    whenever(
      () => view.handles,
      () => {
        clearTimeout(settling);
        settling = setTimeout(settle, SETTLES_AFTER);
      },
    );

    $effect(() => {
      const source: OverlaySource = {
        shown: view.shown,
        handles: view.handles,
        points: openLayout.points,
        guessed: openLayout.guessed,
        numbers: openLayout.numbers,
        chosen: openLayout.selection,
        hovered: openLayout.hover,
        hoverView: openLayout.enlargedView ?? view.hoverView,
        chosenView: openLayout.enlargedView ?? openLayout.lastView,
        guides: view.guides,
        guideView: openLayout.lastView,
        bodies: namedBodies(openLayout, view),
        bounds: { x: 4, y: 4, width: view.size.width - 8, height: view.size.height - 8 },
        scale: view.camera.scale,
        weight: view.weight,
        measure: (text, strong) => stage.measure(text, strong),
        onBoard: (shown, place) => view.onBoard(shown, place),
        length: (mm) => openLayout.length(mm),
        fineLength: (mm) => openLayout.fineLength(mm),
        whereIs: (point, shown) => whereIs(openLayout, point.at, shown),
      };
      const handles = handlesOf(source);
      // What lies over a view goes by the view's plane: over one that is looked at from nearby it would lie beside the car.
      const square = view.shown.filter((each) => !view.eyes[each]);
      const between = gapDimension({
        gap: openLayout.shownGap,
        shown: square,
        weight: view.weight,
        onBoard: source.onBoard,
        length: source.length,
      });
      const parts =
        square.length === 0
          ? []
          : contributions.flatMap((each) => each.overlay?.({ ...source, shown: square }) ?? []);
      const written = notes.place(
        settled,
        [
          ...between.notes,
          ...parts.flatMap(({ firstNotes = [] }) => firstNotes),
          ...notesOf(source),
          ...parts.flatMap((part) => part.notes ?? []),
        ],
        source.measure,
        () => ({
          bounds: source.bounds,
          rects: handles.map(({ x, y }) => ({ x: x - 7, y: y - 7, width: 14, height: 14 })),
          words: [
            ...numberBoxes(handles, source.weight),
            ...platesOver(element),
            ...parts.flatMap(({ rects = [] }) => rects),
          ],
          segments: view.shown.flatMap((shown) =>
            segmentsOf(stage.carNodes.linesOf(shown), (place) => view.onBoard(shown, place)),
          ),
        }),
      );
      const words = [...written.texts, ...parts.flatMap((part) => part.texts ?? [])];
      texts = words.map(({ text }) => text);
      stage.showOver({
        lines: [
          ...(square.length === view.shown.length ? projectionLines(source) : []),
          ...snapLines(source),
          ...parts.flatMap(({ lines = [] }) => lines),
          ...written.lines,
          ...between.lines,
        ],
        marks: [...parts.flatMap(({ marks = [] }) => marks), ...between.marks],
        handles,
        texts: words,
      });
    });

    const spotOf = (shown: View, id: string) => {
      const handle = view.handles.find(({ point, view: of }) => point.id === id && of === shown);
      const box = element.getBoundingClientRect();
      return handle && { x: box.x + handle.x, y: box.y + handle.y };
    };
    const withdrawSpots = openLayout.onSpot(spotOf);
    const withdraw = offerTestHook({
      handleAt: spotOf,
      spotAt: (name, ...asked) => {
        const spot = first((each) => each.spots?.[name])?.(...(asked as never[]));
        if (!spot || !view.shown.includes(spot.view)) return undefined;
        const [x, y] = view.onBoard(spot.view, spot.at);
        const box = element.getBoundingClientRect();
        return { x: box.x + x, y: box.y + y };
      },
      picturedAt: (id) => {
        const spot = view.pictorial.shown && view.pictorial.spots().find(({ point }) => point.id === id);
        const box = element.getBoundingClientRect();
        return spot ? { x: box.x + spot.x, y: box.y + spot.y } : undefined;
      },
      camera: () => view.camera,
      written: () => texts,
    });

    return () => {
      withdraw();
      withdrawSpots();
      clearTimeout(settling);
      observer.disconnect();
      stopWaiting();
      stopWatching();
      stage.destroy();
    };
  };
}

import {
  curvePlot,
  doingLines,
  type HandPose,
  MovedCar,
  type PageData,
  type Shown,
  type ShownCar,
  shownCars,
  steerRange,
} from '../shared-math/moving/index.ts';
import { FAILURE_WORDS } from '../shared-math/words/failure-words.ts';
import { Hands } from './hands.ts';
import { element, elements } from './page-parts.ts';
import { Picture } from './picture.ts';

// The script of the page that moves: the board's own mathematics on the layouts that the page carries. What stands on the page
// without it was written by the same functions.

const data = JSON.parse(element('data').textContent) as PageData;
const cars: readonly ShownCar[] = data.cars.map(({ name, layout }, at) => ({
  at: at as 0 | 1,
  name,
  car: new MovedCar(layout),
}));
const picture = new Picture(element('picture') as unknown as SVGSVGElement, cars);
const doing = element('doing');
const trouble = element('trouble');

function chosen(): Shown {
  const [taken] = elements<HTMLInputElement>('input[name="which"]').filter(({ checked }) => checked);
  return (taken?.value as Shown | undefined) ?? 'both';
}

/** Puts every car into the pose; undefined if all stand there, else what stopped the first that does not. */
function putAll(pose: HandPose): string | undefined {
  const before = cars[0]?.car.pose;
  for (const { name, car } of cars) {
    const failure = car.put(pose);
    if (failure === undefined) continue;
    if (before) for (const each of cars) each.car.put(before);
    return cars.length > 1 ? `${name}: ${FAILURE_WORDS[failure]}` : FAILURE_WORDS[failure];
  }
  return undefined;
}

function drawCurve(shown: readonly ShownCar[]): void {
  const plot = curvePlot(
    cars.map(({ car }) => car),
    data.style,
    steerRange(cars.map(({ car }) => car)),
  );
  for (const { at } of cars) {
    const line = plot.lines[at];
    const group = element(`curve-${at}`);
    group.style.display = shown.some((each) => each.at === at) ? '' : 'none';
    group.querySelector('path')?.setAttribute('d', line?.path ?? '');
    const mark = group.querySelector('circle');
    mark?.setAttribute('cx', String(line?.mark?.[0] ?? 0));
    mark?.setAttribute('cy', String(line?.mark?.[1] ?? 0));
  }
  elements<SVGTextElement>('#curve .across').forEach((text, i) => {
    text.textContent = plot.across[i]?.[1] ?? '';
  });
}

function draw(): void {
  const shown = shownCars(cars, chosen());
  picture.draw(shown);
  doing.replaceChildren(
    ...doingLines(shown, data.style).map((line) => {
      const span = document.createElement('span');
      span.textContent = line;
      return span;
    }),
  );
  drawCurve(shown);
}

const hands = new Hands(data, (pose) => {
  const stopped = putAll(pose);
  trouble.hidden = stopped === undefined;
  trouble.textContent = stopped === undefined ? '' : `It stops here: ${stopped}.`;
  draw();
  return cars[0]?.car.pose ?? pose;
});

for (const input of elements<HTMLInputElement>('input[name="which"]')) input.addEventListener('change', draw);
picture.onTurned = draw;
for (const part of elements<HTMLElement>('[data-moves]')) part.hidden = false;
hands.set(data.start);

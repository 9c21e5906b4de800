import { createHash } from 'node:crypto';
import {
  atTyreWords,
  type BumpFigure,
  bothWheels,
  byThemselves,
  curvePlot,
  doingLines,
  oneWheel,
  roundBump,
  standingWords,
  steerRange,
  steerWords,
} from '../../../shared-math/moving/index.ts';
import { oneLine } from '../../../shared-math/outside/index.ts';
import { formatLength, formatSpan } from '../../../shared-math/units/index.ts';
import { dateWords } from '../flow/page-frame.ts';
import { stateWords, watchFor } from '../pages/customer/customer-words.ts';
import { NONE, turningCircleOf, turnsWords } from '../pages/figures.ts';
import { type Html, html, jsonText, outsideText, verbatim } from './html.ts';
import { type MovingCar, type MovingJob, type MovingModel, movingModelOf } from './moving-model.ts';
import { pageSources } from './page-sources.ts';
import { pageType } from './page-type.ts';
import { pictureFile, pictureKey, staticPicture } from './static-picture.ts';

// The page that moves: one HTML file with all that it needs. Without its script it shows the picture, the figures, the curve and
// the cautions; the script makes the same pictures and sentences in every other pose.

const DOES_NOT_REACH = 'a link does not reach';

/** Each car's figure under one heading, with the car's name where there are two. */
function figure(
  { cars }: MovingModel,
  what: string,
  of: (car: MovingCar) => readonly [big: string, plain: string],
): Html {
  const values = cars.map((car) => {
    const [big, plain] = of(car);
    const name = cars.length > 1 ? html`<span class="named">${outsideText(car.name)}</span>` : html``;
    return html`<dd>${name}<span class="big">${big}</span> ${plain}</dd>`;
  });
  return html`<div><dt>${what}</dt>${values}</div>`;
}

/** What the wheels do over a bump, and how far that is at a tyre. */
function bumped({ car, model: { style } }: MovingCar, { steer }: BumpFigure): readonly [string, string] {
  if (steer === undefined) return [NONE, DOES_NOT_REACH];
  const words = steerWords(steer);
  if (words === undefined) return ['not at all', `${byThemselves(steer)}.`];
  const tyre = atTyreWords(steer, car.layout.car.tyreRadius, style);
  return [words, `by themselves: ${tyre} at each tyre, front against rear.`];
}

function figures(model: MovingModel): Html {
  const [
    {
      car,
      model: { style },
    },
  ] = model.cars as [MovingCar];
  const bump = roundBump(car, style.unit);
  const size = formatLength(bump, style);
  return html`<section class="does" aria-labelledby="figures"><h2 id="figures">What it does</h2><dl class="figures">
${figure(model, `Both wheels hit a ${size} bump`, (each) => bumped(each, bothWheels(each.car, bump)))}
${figure(model, `One wheel hits a ${size} bump`, (each) => {
  const found = oneWheel(each.car, bump);
  const [big, plain] = bumped(each, found);
  return [big, `${plain} ${standingWords(each.car, found.pose, style)}.`];
})}
${figure(model, 'It turns around in', ({ model: { layout, analysis } }) => {
  const circle = turningCircleOf(layout, analysis.turn);
  return [
    circle === undefined ? NONE : formatSpan(circle, style.unit),
    `between kerbs, and the handwheel goes around ${turnsWords(analysis.turn)} times from full left to full right.`,
  ];
})}
</dl></section>`;
}

const LINE_NAMES = ['a', 'b'] as const;

function curve({ cars, data }: MovingModel): Html {
  const moved = cars.map(({ car }) => car);
  const { width, height, area, lines, across, up } = curvePlot(moved, data.style, steerRange(moved));
  const { left, top, right, bottom } = area;
  const said = cars.map(
    ({ name, car }) => html`${outsideText(name)}: ${byThemselves(car.wheels.bumpSteer)}. `,
  );
  return html`<section aria-labelledby="curve-title"><h2 id="curve-title">Steer over bump</h2>
<p class="soft">How far the wheels steer by themselves as the axle goes up and down. Upright is best.</p>
<div class="curve"><svg id="curve" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="curve-said">
<title id="curve-said">${standingWords(moved[0]!, data.start, data.style)}. ${said.map(plainOf)}</title>
<rect class="frame" x="${left}" y="${top}" width="${right - left}" height="${bottom - top}"/>
${across.map(([x]) => html`<path class="rule" d="M${x} ${top}V${bottom}"/>`)}
${up.map(([y]) => html`<path class="axis" d="M${left} ${y}H${right}"/>`)}
${across.map(([x, words], i) => html`<text class="across" x="${x}" y="${bottom + 16}" text-anchor="${i === 0 ? 'start' : i === 4 ? 'end' : 'middle'}">${words}</text>`)}
${up.map(([y, words]) => html`<text x="${left - 5}" y="${y + 4}" text-anchor="end">${words}</text>`)}
${lines.map(
  ({ path, mark }, at) => html`<g id="curve-${at}"><path class="line ${LINE_NAMES[at] ?? 'b'}" d="${path}"/>
${mark ? html`<circle class="mark ${LINE_NAMES[at] ?? 'b'}" cx="${mark[0]}" cy="${mark[1]}" r="6"/>` : html``}</g>`,
)}
</svg></div></section>`;
}

/** A piece in which nothing but text may stand. */
const plainOf = ({ markup }: Html): Html => ({ markup: markup.replace(/<\/?bdi>/g, '') });

function hand(id: string, label: string): Html {
  return html`<div class="hand"><label for="${id}">${label}</label><output id="${id}-words" for="${id}"></output>
<input type="range" id="${id}" min="-100" max="100" value="0" autocomplete="off"></div>`;
}

function hands(): Html {
  return html`<section class="hands" data-moves hidden aria-label="Move the car">
${hand('bump', 'Bump')}
${hand('roll', 'Roll')}
${hand('steering', 'Steering')}
${hand('seen', 'Seen from')}
<div class="buttons"><button type="button" class="main" id="run">Run it over a bump</button>
<button type="button" id="ride">Back to ride height</button></div>
<p class="trouble" id="trouble" role="alert" hidden></p></section>`;
}

function which({ cars }: MovingModel): Html {
  if (cars.length < 2) return html``;
  const choice = (value: string, words: Html, checked: boolean) =>
    html`<label><input type="radio" name="which" value="${value}"${verbatim(checked ? ' checked' : '')}> <span>${words}</span></label>`;
  const [first, second] = cars as [MovingCar, MovingCar];
  return html`<fieldset class="which" data-moves hidden><legend>Show</legend>
${choice('first', outsideText(first.name), false)}
${choice('second', outsideText(second.name), false)}
${choice('both', html`Both`, true)}</fieldset>`;
}

function watch({ cars }: MovingModel): Html {
  const [{ model }] = cars as [MovingCar];
  const lines = watchFor(model).map(
    (line, i) => html`<li${verbatim(i === 0 ? ' class="caution"' : '')}>${line}</li>`,
  );
  return html`<section aria-labelledby="watch"><h2 id="watch">What to watch for</h2><ul class="watch">
${lines}
</ul></section>`;
}

function whose({ job, cars }: MovingModel): Html {
  const [first, second] = cars as [MovingCar, MovingCar | undefined];
  const lines = [
    ...(job.customer ? [html`Drawn for ${outsideText(job.customer)}. `] : []),
    second
      ? html`${outsideText(first.name)}, beside ${outsideText(second.name)}.`
      : html`Variant: ${outsideText(first.name)}.`,
  ];
  return html`<p class="whose">${lines}</p>`;
}

/** How each layout stands against the shop's limits, by its name where there are two. */
function states({ cars }: MovingModel): readonly Html[] {
  return cars.map(({ name, model }) => {
    const whose = cars.length > 1 ? html`${outsideText(name)}: ` : html``;
    return html`<p>${whose}${stateWords(model)}</p>`;
  });
}

const hashOf = (source: string) => `'sha256-${createHash('sha256').update(source, 'utf8').digest('base64')}'`;

/** The whole page, as it stands in its file. */
async function pageOf(model: MovingModel): Promise<string> {
  const { job, cars, data } = model;
  const { script, style: ownStyle } = await pageSources();
  const style = `${pageType()}${ownStyle}`;
  const [first] = cars as [MovingCar];
  const policy = [
    "default-src 'none'",
    `script-src ${hashOf(script)}`,
    `style-src ${hashOf(style)}`,
    'font-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const title = oneLine([job.car || first.name, 'how it steers'].join(' – '));
  const { markup } = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="generator" content="Toeboard">
<title>${title}</title>
<style>${verbatim(style)}</style>
</head>
<body>
<header><h1>${outsideText(job.car || first.name)}</h1>${whose(model)}</header>
<main>
<div class="board">
<div class="side">
<div class="stage">
${staticPicture(model)}
<p class="doing" id="doing" role="status">${doingLines(cars, data.style).map((line) => html`<span>${line}</span>`)}</p>
</div>
${pictureKey(model)}
${figures(model)}
</div>
<div class="side">
${which(model)}
${hands()}
${curve(model)}
</div>
</div>
${watch(model)}
</main>
<footer>${states(model)}
<p>${dateWords(job.date)}. Worked out from the layout as it was drawn then; this page holds the layout and asks nothing of any network.</p></footer>
<script type="application/json" id="data">${jsonText(data)}</script>
<script>${verbatim(script)}</script>
</body>
</html>
`;
  return markup;
}

/** The picture of the page as an SVG of its own, to look at before the page is made. */
export function movingPreview(job: MovingJob): string {
  const model = movingModelOf(job);
  return pictureFile(model);
}

/** Makes a page that moves: one HTML file's bytes. Rejects with the signal's reason when called off. */
export async function movingPage(job: MovingJob): Promise<Uint8Array> {
  job.signal?.throwIfAborted();
  const page = await pageOf(movingModelOf(job));
  job.signal?.throwIfAborted();
  return new Uint8Array(Buffer.from(page, 'utf8'));
}

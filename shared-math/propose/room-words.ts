import { driverSideOf } from '../layout/index.ts';
import { formatDegrees, type LengthStyle, lengthBeside } from '../units/index.ts';
import { carOf } from './car.ts';
import type { Choice, Idea } from './idea.ts';
import { ideasFor } from './ideas.ts';
import type { HoldName, ProposeQuestion } from './question.ts';
import { whereWords } from './words.ts';

/** What a freedom has of room, for a person who decides whether to fix it. */
export interface RoomOf {
  readonly name: HoldName;
  readonly words: string;
}

/** The least and the most of all choices of some words; undefined where no idea has such a choice. */
function rangeOf(ideas: readonly Idea[], words: string): readonly [number, number] | undefined {
  const ranges = ideas
    .flatMap(({ choices }) => choices)
    .filter((choice: Choice) => choice.words === words)
    .map(({ from, to }) => [from, to] as const);
  if (ranges.length === 0) return undefined;
  return [Math.min(...ranges.map(([from]) => from)), Math.max(...ranges.map(([, to]) => to))];
}

/** "4 in to 9 in" */
function between([from, to]: readonly [number, number], style: LengthStyle): string {
  return `${lengthBeside(from, [0], style)} to ${lengthBeside(to, [0], style)}`;
}

/** "from 8 in ahead of the axle to 40 in behind it": mm ahead of the axle. */
function alongWords([back, front]: readonly [number, number], style: LengthStyle): string {
  const length = (mm: number) => lengthBeside(Math.abs(mm), [0], style);
  if (back >= 0) return `from ${length(back)} to ${length(front)} ahead of the axle`;
  if (front <= 0) return `from ${length(front)} to ${length(back)} behind the axle`;
  return `from ${length(front)} ahead of the axle to ${length(back)} behind it`;
}

function placesWords(ideas: readonly Idea[], style: LengthStyle, where: (idea: Idea) => string): string {
  const places = [...new Set(ideas.map((idea) => where(idea).split(',')[0] as string))];
  if (places.length === 0) return 'No rail is near enough for a box.';
  const listed = places.length === 1 ? places[0] : `${places.slice(0, -1).join(', ')} or ${places.at(-1)}`;
  const along = rangeOf(ideas, 'the pitman ball along the car');
  const side = along ? `; in side steer its ball ${alongWords(along, style)}` : '';
  return `${(listed as string).charAt(0).toUpperCase()}${(listed as string).slice(1)}${side}.`;
}

/**
 * How far each freedom may go where it is not held, in the reader's units: the bounds of the ideas that there is room for on
 * this car.
 */
export function roomWords(
  question: Pick<ProposeQuestion, 'document' | 'limits' | 'shelf' | 'style'>,
): RoomOf[] {
  const { document, style } = question;
  const car = carOf({ ...question, held: [] });
  const ideas = ideasFor(car);
  const ways = [...new Set(ideas.map(({ way }) => way))];
  const kinds = new Set(ideas.flatMap(({ boxes }) => boxes.map(({ shelved }) => shelved !== undefined)));
  const pitman = rangeOf(ideas, 'the pitman arm’s length');
  const arm = rangeOf(ideas, 'the steering arm’s length');
  const height = rangeOf(ideas, 'the steering arm ball’s height');
  const stops = rangeOf(ideas, 'the stops');
  const column = document.shaft !== null;
  return [
    {
      name: 'way',
      words:
        ways.length === 2
          ? 'Side or cross steer.'
          : ways[0] === 'side'
            ? 'Side steer alone.'
            : 'Cross steer alone.',
    },
    { name: 'box', words: placesWords(ideas, style, (idea) => whereWords(car, idea)) },
    {
      name: 'box-kind',
      words: `Usual ${kinds.has(true) ? 'ones and those on the shelf' : 'ones'}, manual or assisted.`,
    },
    { name: 'pitman-arm', words: pitman ? `${between(pitman, style)} long.` : '' },
    {
      name: 'steering-arm',
      words:
        arm && height
          ? `${between(arm, style)} long, its ball ${between(height, style)} above the ground.`
          : '',
    },
    { name: 'tie-rod', words: 'The search leaves it as drawn.' },
    {
      name: 'lateral',
      words: ideas.some(({ movesAxle }) => movesAxle)
        ? 'In cross steer laid beside the drag link, as long as it.'
        : 'The search leaves it as drawn.',
    },
    {
      name: 'shaft',
      words: column
        ? 'One to three joints from the column as drawn, bearings where a length needs them.'
        : `No column is drawn on the ${driverSideOf(document)}: the shaft is left open.`,
    },
    {
      name: 'stops',
      words: stops ? `${formatDegrees(stops[0], 0)} to ${formatDegrees(stops[1], 0)} of either wheel.` : '',
    },
  ];
}

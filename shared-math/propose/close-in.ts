import type { Finding } from '../findings/index.ts';
import type { Layout, LayoutDocument } from '../layout/index.ts';
import type { Car } from './car.ts';
import type { Idea } from './idea.ts';
import { judge } from './judge.ts';
import { laidDocument } from './laid-document.ts';
import { newPartsOf } from './new-parts.ts';
import type { NoFit, Proposal } from './proposal.ts';
import { BoxPlaces, roomWords } from './room.ts';
import { boxKindOf } from './shaft-ends.ts';
import { shaftFor } from './shaft-for.ts';
import {
  costWords,
  goodWords,
  ideaWords,
  limitShares,
  pastLimits,
  placeWords,
  proposalName,
} from './words.ts';

/** A place that was found, as a proposal or as why it is none. */
export type Closed = { readonly kind: 'found'; readonly proposal: Proposal } | Stopped;

interface Stopped {
  readonly kind: 'stopped';
  readonly noFit: NoFit;
}

/** What a shaft that does not get there counts beside limits that are missed. */
const NO_SHAFT = 50;
/** What a box that cannot be bolted there counts. */
const NO_ROOM = 30;

function stopWords(stops: readonly Finding[]): string[] {
  return [...new Set(stops.map(({ sentence, limit }) => `${sentence}${limit ? ` (${limit})` : ''}.`))];
}

const stopped = (
  idea: string,
  sentences: readonly string[],
  missing: number,
  layout: LayoutDocument,
): Stopped => ({
  kind: 'stopped',
  noFit: { idea, sentences, missing, layout },
});

/** Why a box cannot be bolted at a place: what stands still is not judged against what stands still, so it is looked at here. */
export function withoutRoom(car: Car, idea: Idea, layout: Layout): Stopped | undefined {
  if (car.held.has('box')) return undefined;
  const places = new BoxPlaces(layout);
  const words = ideaWords(car, idea);
  const room =
    roomWords(places.room(layout).outOfReach, places.reached(layout), car.style) ||
    placeWords(car, idea, layout);
  return room === '' ? undefined : stopped(words, [room], NO_ROOM, laidDocument(car, layout, null, words));
}

/**
 * Why a place is stopped whatever shaft leads there: undefined if its shaft has to be asked. The verdict takes a tenth of a
 * second, a shaft of three joints that is not found some seconds.
 */
export function stoppedAlready(car: Car, idea: Idea, layout: Layout): Closed | undefined {
  const noRoom = withoutRoom(car, idea, layout);
  if (noRoom) return noRoom;
  const words = ideaWords(car, idea);
  const document = laidDocument(car, layout, null, words);
  const { stops } = judge(car, document);
  return stops.length > 0 ? stopped(words, stopWords(stops), stops.length, document) : undefined;
}

/** Why a place without a stop is none where no limit may be passed: those that are. */
export function pastLimitsOnly(car: Car, idea: Idea, layout: Layout): Stopped {
  const words = ideaWords(car, idea);
  const document = laidDocument(car, layout, null, words);
  const past = pastLimits(car, judge(car, document).findings);
  const sentences = past.length > 0 ? stopWords(past) : ['No place of it keeps all limits.'];
  return stopped(words, sentences, past.length, document);
}

/** Routes the shaft to a place, judges the whole document, and puts it into words. */
export function closeIn(car: Car, idea: Idea, layout: Layout, flavour: string): Closed {
  const words = ideaWords(car, idea);
  const noRoom = withoutRoom(car, idea, layout);
  if (noRoom) return noRoom;
  const shaft = shaftFor(car, layout, idea);
  if (shaft.kind === 'none')
    return stopped(
      words,
      [
        `No steering shaft of up to ${idea.joints === 2 ? 'two' : 'three'} joints gets from the column to this box within the joints’ limits.`,
      ],
      NO_SHAFT,
      laidDocument(car, layout, null, words),
    );
  const laid = shaft.kind === 'laid' || shaft.kind === 'held' ? shaft.shaft : null;
  const name = proposalName(car, idea, layout);
  const document = laidDocument(car, layout, laid, name);
  const judged = judge(car, document);
  if (judged.stops.length > 0 || !judged.figures)
    return stopped(words, stopWords(judged.stops), judged.stops.length, document);
  const kind = boxKindOf(layout, idea.boxes);
  return {
    kind: 'found',
    proposal: {
      key: `${idea.key} ${flavour.replaceAll(' ', '-')}`,
      name,
      layout: document,
      figures: judged.figures,
      good: goodWords(car, idea, layout, judged, shaft),
      costs: costWords(car, idea, layout, judged, kind, shaft),
      assumes: idea.assumes ?? null,
      pastLimits: pastLimits(car, judged.findings).length,
      nearestLimit: limitShares(car, judged.figures, laid?.joints ?? [])[0],
      newParts: newPartsOf(car, document),
    },
  };
}

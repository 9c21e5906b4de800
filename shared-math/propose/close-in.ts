import type { Finding } from '../findings/index.ts';
import type { Layout } from '../layout/index.ts';
import type { Car } from './car.ts';
import type { Idea } from './idea.ts';
import { judge } from './judge.ts';
import { laidDocument } from './laid-document.ts';
import { newPartsOf } from './new-parts.ts';
import type { NoFit, Proposal } from './proposal.ts';
import { BoxPlaces, roomWords } from './room.ts';
import { shaftFor } from './shaft-for.ts';
import { costWords, goodWords, ideaWords, limitShares, pastLimits, proposalName } from './words.ts';

/** A place that was found, as a proposal or as why it is none. */
export type Closed =
  | { readonly kind: 'found'; readonly proposal: Proposal }
  | { readonly kind: 'stopped'; readonly noFit: NoFit };

/** What a shaft that does not get there counts beside limits that are missed. */
const NO_SHAFT = 50;
/** What a box that cannot be bolted there counts. */
const NO_ROOM = 30;

function stopWords(stops: readonly Finding[]): string[] {
  return [...new Set(stops.map(({ sentence, limit }) => `${sentence}${limit ? ` (${limit})` : ''}.`))];
}

/** Routes the shaft to a place, judges the whole document, and puts it into words. */
export function closeIn(car: Car, idea: Idea, layout: Layout, flavour: string): Closed {
  const words = ideaWords(car, idea);
  // What stands still is not judged against what stands still: the box's own room is looked at here.
  const room = car.held.has('box') ? '' : roomWords(new BoxPlaces(car.layout).room(layout));
  if (room !== '')
    return {
      kind: 'stopped',
      noFit: {
        idea: words,
        sentences: [room],
        missing: NO_ROOM,
        layout: laidDocument(car, layout, null, words),
      },
    };
  const shaft = shaftFor(car, layout, idea.ahead);
  if (shaft.kind === 'none')
    return {
      kind: 'stopped',
      noFit: {
        idea: words,
        sentences: [
          'No steering shaft of up to three joints gets from the column to this box within the joints’ limits.',
        ],
        missing: NO_SHAFT,
        layout: laidDocument(car, layout, null, words),
      },
    };
  const laid = shaft.kind === 'laid' || shaft.kind === 'held' ? shaft.shaft : null;
  const name = proposalName(car, idea, layout);
  const document = laidDocument(car, layout, laid, name);
  const judged = judge(car, document);
  if (judged.stops.length > 0 || !judged.figures)
    return {
      kind: 'stopped',
      noFit: {
        idea: words,
        sentences: stopWords(judged.stops),
        missing: judged.stops.length,
        layout: document,
      },
    };
  const { box } = layout.steering;
  const kind = idea.boxes.find(
    ({ ratio, sectorTravel }) => ratio === box.ratio && sectorTravel === box.sectorTravel,
  );
  return {
    kind: 'found',
    proposal: {
      key: `${idea.key} ${flavour.replaceAll(' ', '-')}`,
      name,
      layout: document,
      figures: judged.figures,
      good: goodWords(car, idea, judged),
      costs: costWords(car, idea, judged, kind, shaft.kind),
      pastLimits: pastLimits(car, judged.findings).length,
      nearestLimit: limitShares(car, judged.figures)[0],
      newParts: newPartsOf(car, document),
    },
  };
}

import { readShopLimits } from '../../../shared-math/findings/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { USUAL_TURN } from '../../output/drawings/job.ts';
import type { OutputRequest } from '../../output/jobs/index.ts';
import { contentMark } from '../../output/pages/content-mark.ts';
import type { Received } from '../contract.ts';
import { done, type Handlers, type Program } from './handlers.ts';

function wishOf({ wish }: Received<'output.start'>): OutputRequest {
  if (wish.kind !== 'drawing') return wish;
  const { kind, view, format, heave, roll, handwheel, braking, turn, rise, rooms } = wish;
  return {
    kind,
    view,
    format,
    pose: { heave, roll: toRadians(roll), handwheel: toRadians(handwheel), braking },
    turn: {
      azimuth: turn === undefined ? USUAL_TURN.azimuth : toRadians(turn),
      elevation: rise === undefined ? USUAL_TURN.elevation : toRadians(rise),
    },
    rooms,
  };
}

export function outputHandlers({
  store,
  outputs,
}: Program): Pick<Handlers, 'output.start' | 'output.progress' | 'output.cancel'> {
  return {
    'output.start': (input) => {
      const { document, carId, carName, customerName } = store.variants.open(input.id);
      const { unit, fraction, preview } = input;
      const { limits: own, drawnBy } = store.settings.read();
      const limits = readShopLimits(own);
      const survey = store.surveys.readable(carId);
      const measured = survey ? { survey } : {};
      const named = { document, car: carName, customer: customerName, ...measured };
      const mark = contentMark(document);
      const counted = {
        revision: () => store.variants.sheetRevision(input.id, mark),
        wentOut: () => store.variants.sheetWentOut(input.id, mark),
      };
      const whose = typeof drawnBy === 'string' ? { drawnBy } : {};
      const shelf = store.shelf.list();
      const beside = input.beside === undefined ? {} : { beside: store.variants.open(input.beside).document };
      const source = { unit, fraction, preview, limits, shelf, counted, ...whose, ...named, ...beside };
      return { job: outputs.start(wishOf(input), { ...source, date: new Date() }) };
    },
    'output.progress': ({ job }) => outputs.status(job),
    'output.cancel': ({ job }) => done(() => outputs.cancel(job)),
  };
}

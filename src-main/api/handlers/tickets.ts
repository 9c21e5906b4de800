import { carOf, QUESTION_WORDS } from '../../../shared-math/counter/index.ts';
import { readShopLimits } from '../../../shared-math/findings/index.ts';
import { StoreError } from '../../store/index.ts';
import type { Handlers, Program } from './handlers.ts';

type TicketCalls = 'ticket.list' | 'ticket.add' | 'ticket.save' | 'ticket.makeCar' | 'ticket.print';

/** Whose cars those are that were made of tickets without a name. */
const COUNTER = 'From the counter';

export function ticketHandlers({ store, outputs }: Program): Pick<Handlers, TicketCalls> {
  const { tickets, customers, cars, variants, settings } = store;
  const limits = () => readShopLimits(settings.read().limits);

  return {
    'ticket.list': () => ({ tickets: tickets.list() }),
    'ticket.add': (text) => tickets.add(text),
    'ticket.save': ({ id, revision, ...text }) => tickets.save(id, text, revision),

    'ticket.makeCar': ({ id, carName, unit, fraction }) => {
      const { question, customer, note } = tickets.read(id);
      const { name } = QUESTION_WORDS[question.kind];
      const document = carOf(question, name, note, { unit, fraction }, limits());
      if (!document.ok) throw new StoreError('refused-document', document.failure);
      return store.together(() => {
        const whose = customer === '' ? COUNTER : customer;
        const customerId = customers.named(whose) ?? customers.add(whose, '');
        const variantId = variants.add(
          cars.addDistinct(customerId, carName, ''),
          document.value,
          'From the counter',
        );
        tickets.became(id, variantId);
        return { variantId };
      });
    },

    'ticket.print': ({ id, paper, unit, fraction }) => {
      const { question, customer, note, at } = tickets.read(id);
      const { drawnBy } = settings.read();
      const source = {
        question,
        customer,
        note,
        paper,
        style: { unit, fraction },
        limits: limits(),
        asked: new Date(at),
        date: new Date(),
        ...(typeof drawnBy === 'string' ? { drawnBy } : {}),
      };
      return {
        job: outputs.begin(async (watch) =>
          (await import('../../output/jobs/make-ticket.ts')).makeTicket(source, watch),
        ),
      };
    },
  };
}

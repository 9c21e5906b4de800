import { answerOf, QUESTION_WORDS, type Question } from '../../../shared-math/counter/index.ts';
import type { ShopLimits } from '../../../shared-math/findings/index.ts';
import type { LengthStyle } from '../../../shared-math/units/index.ts';
import { safeFileName } from '../../files/index.ts';
import { type PrintedTicket, printTicket } from '../pages/counter/ticket-page.ts';
import type { Made, Watch } from './request.ts';

/** A ticket with what its answer depends on. */
export interface TicketSource
  extends Pick<PrintedTicket, 'customer' | 'note' | 'asked' | 'date' | 'paper' | 'drawnBy'> {
  readonly question: Question;
  readonly style: LengthStyle;
  readonly limits: ShopLimits;
}

/** Makes the page of a ticket, its answer worked out anew. Rejects with the signal's reason when called off. */
export async function makeTicket(source: TicketSource, { signal, progress }: Watch): Promise<Made> {
  signal.throwIfAborted();
  const { question, style, limits, ...rest } = source;
  const { name, asks } = QUESTION_WORDS[question.kind];
  const answer = answerOf(question, style, limits);
  signal.throwIfAborted();
  const whole = await printTicket({ ...rest, name, asks, question, answer });
  signal.throwIfAborted();
  progress(1, 1, 'the ticket');
  const whose = source.customer === '' ? 'Counter' : source.customer;
  return {
    fileName: safeFileName(`${whose} - ${name} - Counter ticket`, 'pdf'),
    type: 'application/pdf',
    parts: [whole],
  };
}

import { QUESTION_WORDS } from '../../../../shared-math/counter/question-words.ts';
import type { Reply } from '../../../../src-main/api/contract.ts';
import { getOpenLayout } from '../../../document/open-layout.svelte.ts';
import { getShell } from '../../../document/shell.svelte.ts';
import type { FindGroup } from '../find-group.ts';

/** The counter's tickets, by whose they are, read when the page of the drawer is opened. */
export function foundTickets(): FindGroup {
  const openLayout = getOpenLayout();
  const shell = getShell();
  let tickets: Reply<'ticket.list'>['tickets'] = $state.raw([]);
  void openLayout.call('ticket.list', {}).then((reply) => {
    if (reply.ok) tickets = reply.value.tickets;
  });
  return {
    id: 'tickets',
    title: 'Tickets of the counter',
    entries: () =>
      tickets.map(({ id, customer, note, headline, question }) => ({
        id,
        name: customer === '' ? headline : customer,
        aside: QUESTION_WORDS[question.kind].name,
        also: `${note} ${headline}`,
        run: () => shell.openCounter({ ticket: id }),
      })),
  };
}

import { copyHandlers } from './copies.ts';
import { demonstrationHandlers } from './demonstrations.ts';
import { fileHandlers } from './files.ts';
import type { Handlers, Program } from './handlers.ts';
import { outputHandlers } from './outputs.ts';
import { pointHandlers } from './points.ts';
import { programHandlers } from './program.ts';
import { shelfHandlers } from './shelf.ts';
import { shopHandlers } from './shop.ts';
import { surveyHandlers } from './surveys.ts';
import { ticketHandlers } from './tickets.ts';
import { variantHandlers } from './variants.ts';

export type { Handlers, Program };

/** An answer to every call of the contract, by topic. */
export function createHandlers(program: Program): Handlers {
  return {
    ...programHandlers(program),
    ...shopHandlers(program),
    ...shelfHandlers(program),
    ...pointHandlers(),
    ...surveyHandlers(program),
    ...variantHandlers(program),
    ...fileHandlers(program),
    ...copyHandlers(program),
    ...outputHandlers(program),
    ...ticketHandlers(program),
    ...demonstrationHandlers(program),
  };
}

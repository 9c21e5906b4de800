import { describe, expect, test } from 'vitest';
import { contract } from '../../src-main/api/contract.ts';
import { Coverage, sessionsOver } from '../support/host-session.ts';
import { TRANSPORTS } from '../support/host-transports.ts';
import { copyTests } from './suite/copies.ts';
import { failureTests } from './suite/failures.ts';
import { fileTests } from './suite/files.ts';
import { historyTests } from './suite/history.ts';
import { outputTests } from './suite/outputs.ts';
import { photoTests } from './suite/photos.ts';
import { programTests } from './suite/program.ts';
import { shelfTests } from './suite/shelf.ts';
import { shopTests } from './suite/shop.ts';
import { surveyTests } from './suite/surveys.ts';
import { ticketTests } from './suite/tickets.ts';
import { variantTests } from './suite/variants.ts';

describe.each(TRANSPORTS)('calls by $name', (transport) => {
  const coverage = new Coverage();
  const open = sessionsOver(transport, coverage);

  programTests(open);
  shopTests(open);
  shelfTests(open);
  surveyTests(open);
  variantTests(open);
  historyTests(open);
  fileTests(open);
  copyTests(open);
  photoTests(open);
  outputTests(open);
  ticketTests(open);
  failureTests(open);

  test('every call of the contract has answered and every failure has been met', () => {
    expect([...coverage.succeeded].sort()).toEqual(Object.keys(contract).sort());
    expect([...coverage.codes].sort()).toEqual([
      'bad-request',
      'changed-elsewhere',
      'internal',
      'not-found',
      'refused-document',
      'storage-failed',
    ]);
  });
});

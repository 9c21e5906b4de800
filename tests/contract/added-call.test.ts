import { beforeAll, describe, expect, test, vi } from 'vitest';
import { z } from 'zod';
import type { Call, CallHost } from '../../src-main/api/contract.ts';
import { newFolder, removeFolder } from '../support/host-folder.ts';
import { TRANSPORTS } from '../support/host-transports.ts';

// A call of the API is one entry in the contract and its handler: a dummy is answered over both hosts, its input and its
// reply looked over, though neither host, nor the page's client, knows a call by name.

const NAME = 'dummy.double' as Call;

vi.mock('../../src-main/api/contract.ts', async (original) => {
  const actual = await original<typeof import('../../src-main/api/contract.ts')>();
  const dummy = {
    input: z.strictObject({ of: z.number().max(10) }),
    output: z.object({ twice: z.number().max(16) }),
  };
  return { ...actual, contract: { ...actual.contract, 'dummy.double': dummy } };
});
vi.mock('../../src-main/api/handlers/program.ts', async (original) => {
  const { programHandlers } = await original<typeof import('../../src-main/api/handlers/program.ts')>();
  return {
    programHandlers: (program: Parameters<typeof programHandlers>[0]) => ({
      ...programHandlers(program),
      'dummy.double': ({ of }: { of: number }) => ({ twice: 2 * of }),
    }),
  };
});

describe.each(TRANSPORTS)('a call added, by $name', ({ open }) => {
  let call: (name: Call, input: unknown) => ReturnType<CallHost>;
  beforeAll(async () => {
    const folder = newFolder();
    const host = await open(folder);
    call = host.call as typeof call;
    return async () => {
      await host.close();
      await removeFolder(folder);
    };
  });

  test('is answered', async () => {
    expect(await call(NAME, { of: 4 })).toEqual({ ok: true, value: { twice: 8 } });
  });

  test('its input is looked over before the handler sees it', async () => {
    const refused = await call(NAME, { of: 11 });
    expect(refused).toMatchObject({ ok: false, failure: { code: 'bad-request' } });
    expect(refused.ok ? '' : refused.failure.reason).toContain('dummy.double: of: must be at most 10');
    expect(await call(NAME, { of: 1, and: 2 })).toMatchObject({
      ok: false,
      failure: { code: 'bad-request' },
    });
  });

  test('a reply against its contract is a fault of the program', async () => {
    expect(await call(NAME, { of: 9 })).toMatchObject({ ok: false, failure: { code: 'internal' } });
  });

  test('the calls beside it are answered as before', async () => {
    expect(await call('settings.get', {})).toMatchObject({ ok: true });
  });
});

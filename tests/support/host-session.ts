import { expect, onTestFinished } from 'vitest';
import type { Call, CallHost } from '../../src-main/api/contract.ts';
import { testFolder } from './host-folder.ts';
import { sampleLayout } from './host-sample.ts';
import { type OpenedHost, type Transport, value } from './host-transports.ts';
import { quickFolder } from './quick-folder.ts';

/** Which calls were made and how they ended, over all tests of one transport. */
export class Coverage {
  readonly succeeded = new Set<Call>();
  readonly codes = new Set<string>();

  watch(call: CallHost): CallHost {
    return async (name, input) => {
      const result = await call(name, input);
      if (result.ok) this.succeeded.add(name);
      else this.codes.add(result.failure.code);
      return result;
    };
  }
}

export interface Session {
  readonly call: CallHost;
  readonly photo: OpenedHost['photo'];
  readonly dataFolder: string;
  /** Ends the host and opens it again on the same folder, as at the next start. */
  readonly reopen: () => Promise<CallHost>;
}

/** Opens a host on an empty folder for one test. */
export type OpenSession = () => Promise<Session>;

export function sessionsOver(transport: Transport, coverage: Coverage): OpenSession {
  return async () => {
    const dataFolder = testFolder(quickFolder());
    let host: OpenedHost = await transport.open(dataFolder);
    onTestFinished(() => host.close());
    return {
      call: coverage.watch(host.call),
      photo: (path, content) => host.photo(path, content),
      dataFolder,
      reopen: async () => {
        await host.close();
        host = await transport.open(dataFolder);
        return coverage.watch(host.call);
      },
    };
  };
}

/** A customer with a car with a variant. */
export async function begin(call: CallHost) {
  const { id: customerId } = await value(call, 'customer.add', { name: 'Odd Fellow' });
  const { id: carId } = await value(call, 'car.add', { customerId, name: 'Roadster' });
  const { id } = await value(call, 'variant.add', { carId, document: sampleLayout() });
  return { customerId, carId, id };
}

/** The drawer as a person reads it: one line each, indented. */
export async function drawer(call: CallHost): Promise<string[]> {
  const { customers } = await value(call, 'shop.read', {});
  return customers.flatMap((customer) => [
    customer.name,
    ...customer.cars.flatMap((car) => [
      `  ${car.name}`,
      ...car.variants.map((variant) => `    ${variant.name}`),
    ]),
  ]);
}

/** The labels of a variant's history, newest first. */
export async function labels(call: CallHost, variantId: string): Promise<string[]> {
  const { states } = await value(call, 'history.list', { variantId });
  expect(states.every((state, index) => index === 0 || state.id < (states[index - 1]?.id ?? 0))).toBe(true);
  return states.map((state) => state.label);
}

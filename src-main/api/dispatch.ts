import { refusalLine, refusalOf } from '../../shared-math/layout/index.ts';
import { oneLine, quoted } from '../../shared-math/outside/index.ts';
import { reasonOutside, StoreError, storageReason } from '../store/index.ts';
import { type Call, type CallFailure, type CallResult, contract } from './contract.ts';
import type { Handlers } from './handlers/index.ts';

/** Where a host writes down what went wrong inside; never sent to the board. */
export type FaultLog = (fault: unknown) => void;

function failure(code: CallFailure['code'], reason: string) {
  return { ok: false, failure: { code, reason: oneLine(reason) } } as const;
}

function failureOf(error: unknown, name: Call, log: FaultLog) {
  if (error instanceof StoreError) return failure(error.code, error.message);
  const outside = reasonOutside(error);
  // Where in the program it met a full disk helps nobody, and it meets one every few seconds.
  log(outside === undefined ? error : `${name}: ${outside}`);
  const reason = outside ?? storageReason(error);
  return reason === undefined
    ? failure('internal', `Toeboard made a mistake of its own in ${name}`)
    : failure('storage-failed', reason);
}

function isCall(name: unknown): name is Call {
  return typeof name === 'string' && Object.hasOwn(contract, name);
}

function named(name: unknown): string {
  return typeof name === 'string' ? quoted(name) : 'without a name';
}

/**
 * Answers one call, whatever carried it here: checks the input, asks the handler, checks the reply.
 * Never throws; every failure is data with one plain line.
 */
export function dispatch(
  handlers: Handlers,
  name: unknown,
  input: unknown,
  log: FaultLog = console.error,
): CallResult<Call> {
  if (!isCall(name)) return failure('bad-request', `there is no call ${named(name)}`);
  try {
    const received = contract[name].input.safeParse(input);
    if (!received.success)
      return failure('bad-request', `${name}: ${refusalLine(refusalOf(received.error, input))}`);
    const handler = handlers[name] as (checked: unknown) => unknown;
    const reply = contract[name].output.safeParse(handler(received.data));
    if (reply.success) return { ok: true, value: reply.data };
    // The handler has done its work but answers nonsense: a defect of this program, reported as one.
    throw new Error(`${name} answered against its contract: ${reply.error.message}`);
  } catch (error) {
    return failureOf(error, name, log);
  }
}

import { beforeEach, expect, test, vi } from 'vitest';
import { layoutSchema } from '../../shared-math/layout/index.ts';
import { dispatch } from '../../src-main/api/dispatch.ts';
import { createHandlers, type Program } from '../../src-main/api/handlers/index.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { testStore, withVariant } from '../support/store-sample.ts';

// What the schema is run over is counted inside zod, through which every way of parsing goes.

let parsings: { readonly mock: { readonly calls: unknown[] } };
let call: (name: string, input: unknown) => unknown;
let id: string;

beforeEach(() => {
  const store = testStore();
  id = withVariant(store);
  const handlers = createHandlers({ store } as Program);
  call = (name, input) => {
    const answer = dispatch(handlers, name, input);
    if (!answer.ok) throw new Error(answer.failure.reason);
    return answer.value;
  };
  parsings = vi.spyOn(layoutSchema._zod, 'run');
  return () => vi.restoreAllMocks();
});

const save = (z: number, revision: number) => ({
  id,
  document: sampleLayout('Arm down', z),
  revision,
  step: `step ${z}`,
  label: 'Drag',
});

test('a document is parsed once when it is saved', () => {
  call('variant.save', save(300, 1));
  expect(parsings.mock.calls).toHaveLength(1);
});

test('a document is parsed once when it is opened, and is the one that was saved', () => {
  call('variant.save', save(300, 1));
  const before = parsings.mock.calls.length;
  expect(call('variant.open', { id })).toMatchObject({ document: sampleLayout('Arm down', 300) });
  expect(parsings.mock.calls.length - before).toBe(1);
});

test('an earlier state is parsed once when it is looked at, and once when it is gone back to', () => {
  call('variant.save', save(300, 1));
  const { states } = call('history.list', { variantId: id }) as { states: { id: number }[] };
  const oldest = states.at(-1)?.id;
  for (const [name, input] of [
    ['history.read', { id: oldest }],
    ['history.restore', { variantId: id, id: oldest }],
  ] as const) {
    const before = parsings.mock.calls.length;
    expect(call(name, input)).toMatchObject({ document: sampleLayout() });
    expect(parsings.mock.calls.length - before, name).toBe(1);
  }
  expect(call('variant.open', { id })).toMatchObject({ document: sampleLayout(), revision: 3 });
});

import { expect, test } from 'vitest';
import { sampleLayout } from '../../support/host-sample.ts';
import { begin, labels, type OpenSession } from '../../support/host-session.ts';
import { failure, value } from '../../support/host-transports.ts';

export function historyTests(open: OpenSession): void {
  test('an earlier state is brought back under the present name, and the one before it stays', async () => {
    const { call } = await open();
    const { id } = await begin(call);
    const document = sampleLayout('Arm down', 300);
    await value(call, 'variant.save', { id, document, revision: 1, step: 's', label: 'Pitman ball moved' });
    await value(call, 'variant.rename', { id, name: 'Arm up' });
    const { states } = await value(call, 'history.list', { variantId: id });

    const restored = await value(call, 'history.restore', { variantId: id, id: states.at(-1)?.id ?? 0 });
    expect(restored).toMatchObject({ document: sampleLayout('Arm up', 346), revision: 4 });
    expect(await value(call, 'variant.open', { id })).toEqual(restored);
    expect(await labels(call, id)).toEqual([
      'Restore: Created',
      'Renamed to Arm up',
      'Pitman ball moved',
      'Created',
    ]);

    const undone = await value(call, 'history.restore', { variantId: id, id: states[0]?.id ?? 0 });
    expect(undone.document).toEqual(sampleLayout('Arm up', 300));
  });

  test('a state of another variant is not brought back into this one', async () => {
    const { call } = await open();
    const { id, carId } = await begin(call);
    const { id: other } = await value(call, 'variant.add', { carId, document: sampleLayout('Arm up') });
    const { states } = await value(call, 'history.list', { variantId: other });
    expect(await failure(call, 'history.restore', { variantId: id, id: states[0]?.id })).toBe(
      'not-found: this state is not in the history of this variant',
    );
    expect(await failure(call, 'history.read', { id: 999_999 })).toMatch(/^not-found: /);
    expect(await failure(call, 'history.list', { variantId: crypto.randomUUID() })).toMatch(/^not-found: /);
  });
}

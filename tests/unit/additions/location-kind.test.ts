import { beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import type { LayoutDocument, LocationFacts, LocationKind } from '../../../shared-math/layout/index.ts';
import type { AxleKind } from '../../../shared-math/pose/rows.ts';
import { useFreshModules } from '../../support/fresh-modules.ts';
import { rawLayout } from '../../support/layouts.ts';

// A kind of axle location is its shape, one entry of facts, its rows, its strokes; what else knows each kind is asked for
// by the compiler (tests/types/forgotten-piece.test.ts). A dummy that is held as hairpins are solves and stands as they do.

const KIND = 'trailing-arms' as LocationKind;
type Arms = { readonly left: { readonly eye: number[] }; readonly right: { readonly eye: number[] } };

const facts: LocationFacts = {
  words: 'trailing arms',
  points: [{ path: 'eye', name: 'arm, eye', carrier: 'frame', sided: 'location' }],
  part: 'location.left.eye',
  rodEnd: 'Trailing arm eye',
};
const rows: AxleKind<Arms> = {
  rows: (location) =>
    (['left', 'right'] as const).map((side) => {
      const eye = location[side].eye as unknown as readonly [number, number, number];
      return { form: 'coincide', half: side, axle: eye, frame: eye, weights: [1, 0.001, 1] };
    }),
};

type Modules = {
  layout: typeof import('../../../shared-math/layout/index.ts');
  linkage: typeof import('../../../shared-math/linkage/index.ts');
  drawing: typeof import('../../../shared-math/drawing/index.ts');
  words: typeof import('../../../shared-math/words/index.ts');
  finding: typeof import('../../../shared-math/findings/finding.ts');
};
let the: Modules;
const drawn: string[] = [];

useFreshModules();
beforeAll(async () => {
  const { layoutSchema } = await import('../../../shared-math/layout/schema.ts');
  const { point } = await import('../../../shared-math/layout/measures.ts');
  const side = z.strictObject({ eye: point });
  const arms = z.strictObject({
    kind: z.literal('trailing-arms'),
    left: side,
    right: z.union([z.literal('mirror'), side]),
  });
  const { location } = layoutSchema.shape as unknown as { location: z.ZodDiscriminatedUnion };
  const options = [...location.options, arms] as unknown as [z.ZodObject, z.ZodObject];
  const schema = layoutSchema.extend({ location: z.discriminatedUnion('kind', options) });
  const { vi } = await import('vitest');
  vi.doMock('../../../shared-math/layout/schema.ts', () => ({ layoutSchema: schema }));
  const { LOCATION_FACTS } = await import('../../../shared-math/layout/location-kinds.ts');
  (LOCATION_FACTS as Record<string, LocationFacts>)[KIND] = facts;
  const { LOCATION_KINDS } = await import('../../../shared-math/pose/location-kinds/index.ts');
  (LOCATION_KINDS as unknown as Record<string, AxleKind<Arms>>)[KIND] = rows;
  const { LOCATION_PARTS } = await import('../../../shared-math/drawing/parts/location-kinds/index.ts');
  (LOCATION_PARTS as Record<string, () => void>)[KIND] = () => void drawn.push(KIND);
  the = {
    layout: await import('../../../shared-math/layout/index.ts'),
    linkage: await import('../../../shared-math/linkage/index.ts'),
    drawing: await import('../../../shared-math/drawing/index.ts'),
    words: await import('../../../shared-math/words/index.ts'),
    finding: await import('../../../shared-math/findings/finding.ts'),
  };
  return () => vi.doUnmock('../../../shared-math/layout/schema.ts');
});

const EYE = [-890, 415, 335];
function document(location: unknown): LayoutDocument {
  const read = the.layout.readLayout(rawLayout({ location }));
  if (!read.ok) throw new Error(`${read.failure.path}: ${read.failure.reason}`);
  return read.value;
}
const armed = () => document({ kind: KIND, left: { eye: EYE }, right: 'mirror' });
const hairpins = () => document({ kind: 'hairpins', left: { framePivot: EYE }, right: 'mirror' });

describe('a kind of axle location added', () => {
  test('is read, and one of another shape refused', () => {
    expect(armed().location.kind).toBe(KIND);
    expect(the.layout.readLayout(rawLayout({ location: { kind: KIND, left: {}, right: 'mirror' } })).ok).toBe(
      false,
    );
  });

  test('its points are hardpoints, mirrored, carried and moved as a pair', () => {
    const points = the.layout.hardpoints(armed()).filter(({ id }) => id.startsWith('location.'));
    expect(points.map(({ id, name, carrier, at }) => [id, name, carrier, at])).toEqual([
      ['location.left.eye', 'Left arm, eye', 'frame', EYE],
      ['location.right.eye', 'Right arm, eye', 'frame', [-890, -415, 335]],
    ]);
    expect(points[0]?.twin).toBe('location.right.eye');
    const moved = the.layout.moveHardpoint(armed(), 'location.right.eye', [-900, -415, 335]);
    expect(the.layout.hardpoints(moved).find(({ id }) => id === 'location.left.eye')?.at).toEqual([
      -900, 415, 335,
    ]);
  });

  test('solves as hairpins do that are held in the same places', () => {
    const { prepareFrontEnd, createState, solveFrontEnd } = the.linkage;
    const steers = [armed(), hairpins()].map((each) => {
      const state = createState();
      expect(solveFrontEnd(prepareFrontEnd(the.layout.resolveLayout(each)), 40, 0, 0, state)).toBe('ok');
      return [state.meanSteer, state.left.caster, state.axle.x];
    });
    expect(steers[0]).toEqual(steers[1]);
  });

  test('is offered by its words, spoken of by its part, and drawn by its strokes', () => {
    expect(the.words.LOCATION_WORDS).toContainEqual([KIND, 'trailing arms']);
    const layout = the.layout.resolveLayout(armed());
    expect(the.finding.locationPart(layout)).toBe('location.left.eye');
    the.drawing.drawLayout(layout);
    expect(drawn).toEqual([KIND]);
  });
});

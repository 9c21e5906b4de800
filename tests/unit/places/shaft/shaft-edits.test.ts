import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type JointSide,
  type LayoutDocument,
  readLayout,
  refusalLine,
  type ShaftDocument,
  type ShaftEnd,
  type ShaftStock,
} from '../../../../shared-math/layout/index.ts';
import {
  bestClocked,
  checkMeetings,
  firstShaft,
  routeOf,
  sideTaking,
  stockFor,
  turningOf,
} from '../../../../shared-math/shaft/index.ts';
import {
  asKind,
  END_KINDS,
  fieldsOf,
  readField,
  SIDE_KINDS,
  STOCK_KINDS,
  withField,
} from '../../../../src-renderer/panels/ends/end-forms.ts';
import {
  halfTurned,
  withClock,
  withEnd,
  withJointIn,
  withKind,
  withoutJoint,
  withPartAxis,
  withSide,
  withStock,
  withSupport,
} from '../../../../src-renderer/places/shaft/shaft-edits.ts';
import { documentOf, rawLayout } from '../../../support/layouts.ts';
import { shaftOf } from '../../../support/shafts.ts';

const STYLE = { unit: 'in', fraction: 16 } as const;
const plain = documentOf(rawLayout());

/** Why a document with this shaft would be refused; empty where it is taken. */
function refused(shaft: ShaftDocument): string {
  const read = readLayout({ ...plain, shaft });
  return read.ok ? '' : refusalLine(read.failure);
}

const status = (shaft: ShaftDocument, name: string) =>
  checkMeetings(shaft, routeOf(shaft), STYLE).find((meeting) => meeting.name === name)?.status;

const ends = Object.values(END_KINDS).map(({ usual }): [string, ShaftEnd] => [usual.kind, usual]);
const sides = Object.values(SIDE_KINDS).map(({ usual }): [string, JointSide] => [usual.kind, usual]);
const stocks = Object.values(STOCK_KINDS).map(({ usual }): [string, ShaftStock] => [usual.kind, usual]);

describe('usual ends', () => {
  test.each(ends)('%s at the column is a document, and the joint that takes it fits', (_, end) => {
    const shaft = withEnd(shaftOf(), 'column', end);
    expect(refused(shaft)).toBe('');
    // Described without its depth: how deep a column sits is measured on the car.
    const { depth: _depth, ...bare } = sideTaking(end, undefined);
    const taken = withSide(shaft, { joint: 0, side: 'columnSide' }, bare as JointSide);
    expect(refused(taken)).toBe('');
    expect(status(taken, 'Column and joint 1')).toBe('fits');
  });

  test.each(sides)('%s takes the stock that is offered for it', (_, side) => {
    const shaft = withSide(shaftOf(), { joint: 0, side: 'boxSide' }, side);
    expect(refused(shaft)).toBe('');
    const stocked = withStock(shaft, 0, stockFor(side));
    expect(refused(stocked)).toBe('');
    expect(status(stocked, 'Shaft 1 and joint 1')).toBe('fits');
  });

  test.each(stocks)('%s is a document', (_, stock) => {
    expect(refused(withStock(shaftOf(), 0, stock))).toBe('');
  });

  test('changing the kind keeps what the two have in common, and never makes flats wider than the round', () => {
    const large: ShaftEnd = { kind: 'round', diameter: 25.4 };
    expect(asKind<ShaftEnd>(large, END_KINDS['double-d'].usual)).toMatchObject({
      kind: 'double-d',
      diameter: 25.4,
    });
    const small = asKind<ShaftEnd>({ kind: 'round', diameter: 12 }, END_KINDS['double-d'].usual);
    expect(small.diameter).toBe(12);
    expect(refused(withEnd(shaftOf(), 'column', small))).toBe('');
  });

  test('a field is set, left out, and refused in one line', () => {
    const { usual, fields } = SIDE_KINDS['double-d-pinch-bolt'];
    expect(withField(usual, 'bolt.fromFace', 18).bolt).toMatchObject({ fromFace: 18, diameter: 9.525 });
    expect('depth' in withField(usual, 'depth', undefined)).toBe(false);
    const bore = fields.find(({ path }) => path === 'bore');
    const depth = fields.find(({ path }) => path === 'depth');
    if (!bore || !depth) throw new Error('the fields are there');
    expect(readField(bore, '', 'in').ok).toBe(false);
    expect(readField(bore, '0', 'in').ok).toBe(false);
    expect(readField(bore, '3/4', 'in')).toEqual({ ok: true, value: 19.05 });
    expect(readField(depth, '', 'in')).toEqual({ ok: true, value: undefined });
    expect(readField({ path: 'teeth', words: '', type: 'count' }, '36.5', 'in').ok).toBe(false);
    expect(readField({ path: 'pitch', words: '', type: 'pitch' }, '48/96', 'in')).toEqual({
      ok: true,
      value: 48,
    });
  });
});

describe('a spline of another form', () => {
  const { usual, fields } = STOCK_KINDS.splined;

  test('gives its tooth size by pitch or by module, never by both', () => {
    const types = (fit: typeof usual) => fieldsOf(fit, fields).map(({ type }) => type);
    expect(types(usual)).toContain('pitch');
    expect(types(usual)).not.toContain('module');
    const metric = withField(withField(usual, 'form', 'metric-30'), 'module', 1);
    expect(types(metric)).toContain('module');
    expect(types(metric)).not.toContain('pitch');
    expect('pitch' in metric).toBe(false);
    expect(withField(metric, 'form', 'involute-30')).not.toHaveProperty('module');
    expect(types(withField(usual, 'form', 'serrated'))).not.toContain('pitch');
  });

  test('keeps a pitch that is not known unknown when the kind of end changes', () => {
    const { pitch: _, ...unknown } = { ...SIDE_KINDS.spline.usual, form: 'unidentified' as const };
    expect(asKind<JointSide>(unknown, SIDE_KINDS['spline-pinch-bolt'].usual)).not.toHaveProperty('pitch');
  });
});

describe('edits of a route', () => {
  test('whatever comes and goes, the document holds and every support has its shaft', () => {
    const step = fc.oneof(
      fc.record({ kind: fc.constant('add' as const), at: fc.nat(6) }),
      fc.record({ kind: fc.constant('take' as const), at: fc.nat(6) }),
      fc.record({ kind: fc.constant('support' as const), at: fc.nat(6) }),
      fc.record({ kind: fc.constant('double' as const), at: fc.nat(6) }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        let shaft = shaftOf();
        for (const { kind, at } of steps) {
          const joint = at % shaft.joints.length;
          const piece = shaft.shafts.length > 0 ? at % shaft.shafts.length : undefined;
          if (kind === 'add' && piece !== undefined && shaft.joints.length < 8)
            shaft = withJointIn(shaft, piece);
          if (kind === 'take') shaft = withoutJoint(shaft, joint) ?? shaft;
          if (kind === 'support' && piece !== undefined) shaft = withSupport(shaft, piece);
          if (kind === 'double') shaft = withKind(shaft, joint, 'double');
        }
        expect(refused(shaft)).toBe('');
        expect(shaft.shafts).toHaveLength(shaft.joints.length - 1);
      }),
      { seed: 7, numRuns: 150 },
    );
  });

  test('a bearing keeps its place on the way when a joint is put in beside it', () => {
    const held = {
      ...shaftOf(),
      supports: [
        { shaft: 0, at: 0.25 },
        { shaft: 0, at: 0.75 },
      ],
    };
    expect(withJointIn(held, 0).supports).toEqual([
      { shaft: 0, at: 0.5 },
      { shaft: 1, at: 0.5 },
    ]);
  });

  test('the clocks that are set are those that leave the least', () => {
    const best = bestClocked(withClock(shaftOf(), 0, 60));
    if (!best) throw new Error('it turns');
    const turning = turningOf(best, routeOf(best));
    if (!turning.ok) throw new Error('it turns');
    // Within what a tenth of a degree of clock comes to.
    expect(turning.value.motion.swing - turning.value.best.swing).toBeLessThan(1e-5);
  });

  test('an axis that is turned takes its joint along, on the axis as before', () => {
    const shaft = shaftOf();
    const turned = withPartAxis(shaft, 'column', [0.9, 0, -0.3]);
    expect(routeOf(turned).column.off).toBeLessThan(1e-9);
    expect(routeOf(turned).column.along).toBeCloseTo(routeOf(shaft).column.along, 6);
  });

  test('ears are the same after half a turn', () => {
    for (const [given, wanted] of [
      [0, 0],
      [90, 90],
      [-90, 90],
      [91, -89],
      [180, 0],
      [-250, -70],
    ] as const)
      expect(halfTurned(given)).toBeCloseTo(wanted, 9);
  });

  test.each([450, -450])('a first shaft begins and ends on its axes, on the side of the box (%d)', (y) => {
    const { box } = plain.steering;
    const document: LayoutDocument = {
      ...plain,
      steering: { ...plain.steering, box: { ...box, sectorCentre: [-880, y, 480] } },
    };
    const shaft = firstShaft(document);
    expect(refused(shaft)).toBe('');
    const route = routeOf(shaft);
    expect(Math.max(route.column.off, route.box.off)).toBeLessThan(0.1);
    expect(Math.sign(shaft.column.end[1])).toBe(Math.sign(y));
    expect(turningOf(shaft, route).ok).toBe(true);
  });
});

import { describe, expect, test } from 'vitest';
import { hardpoints, resolveLayout } from '../../shared-math/layout/index.ts';
import { CAUTIONS, cautionsAt } from '../../shared-math/words/index.ts';
import { CROSS_STEER, documentOf, LATERALS, LOCATIONS, rawLayout, SIDE_STEER } from '../support/layouts.ts';

const layout = (over: Record<string, unknown> = {}) => resolveLayout(documentOf(rawLayout(over)));
const at = (point: string, over: Record<string, unknown> = {}) =>
  cautionsAt(layout(over), point).map(({ id }) => id);

describe('cautions', () => {
  test('are a short line and notes with their sources, and leave the say to those who have it', () => {
    for (const { line, notes, id } of CAUTIONS) {
      expect(line.length, id).toBeLessThanOrEqual(42);
      expect(line).toMatch(/^[A-Z].*\.$/);
      for (const { words, source } of notes) {
        expect(words).toMatch(/^[A-Z].*\.$/);
        expect(source).not.toBe('');
      }
      const said = notes.map(({ words }) => words).join(' ');
      for (const who of [/local code/, /maker/, /qualified|certifier/]) expect(said, id).toMatch(who);
    }
  });

  test('stand where the risk is chosen', () => {
    expect(at('steering.dragLinkBall')).toEqual(['arms', 'link-ends']);
    expect(at('axle.right.tieRodBall')).toEqual(['arms', 'link-ends']);
    expect(at('location.left.framePivot')).toEqual(['link-ends', 'rods']);
    expect(at('lateral.frame', { lateral: LATERALS.bar })).toEqual(['link-ends']);
    expect(at('location.left.upper.axle', { location: LOCATIONS['four-bar'] })).toEqual([
      'link-ends',
      'rods',
    ]);
  });

  test('of assistance only where there is some, of stops only where there are none', () => {
    expect(at('steering.box.sectorCentre')).toEqual(['stops']);
    expect(at('steering.box.sectorCentre', { steering: { ...CROSS_STEER, stopAngle: 32 } })).toEqual([
      'assistance',
    ]);
    expect(at('axle.left.wheelCentre', { steering: { ...SIDE_STEER, stopAngle: 32 } })).toEqual([]);
    // Of the point itself, not of one that is called after it, nor of another point of a power-assisted car.
    expect(at('axle.left.wheelCentre', { steering: { ...CROSS_STEER, stopAngle: 32 } })).toEqual([]);
    expect(at('axle.left.wheelCentreCap')).toEqual([]);
    expect(at('steering.box.sectorCentreCap')).toEqual([]);
  });

  test('are silent where nothing of the kind is chosen', () => {
    const document = documentOf(rawLayout({ location: LOCATIONS['parallel-leaf'] }));
    const silent = hardpoints(document).filter(
      ({ id }) => cautionsAt(resolveLayout(document), id).length === 0,
    );
    expect(silent.map(({ id }) => id)).toContain('axle.left.kingpinTop');
    expect(silent.map(({ id }) => id)).toContain('location.left.seat');
  });
});

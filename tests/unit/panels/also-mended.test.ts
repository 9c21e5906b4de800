import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { analyse, type Finding, findings, LIMITS } from '../../../shared-math/findings/index.ts';
import { type LayoutDocument, parseLayout, resolveLayout } from '../../../shared-math/layout/index.ts';
import { toDegrees } from '../../../shared-math/units/index.ts';
import { alsoMended } from '../../../src-renderer/panels/findings/also-mended.ts';
import { remedied } from '../../../src-renderer/panels/findings/remedies.ts';
import { slope } from '../../support/measures.ts';

const STYLE = { unit: 'in', fraction: 16 } as const;
const READER = { style: STYLE, limits: {} };

function demonstration(name: string): LayoutDocument {
  const read = parseLayout(
    readFileSync(join(import.meta.dirname, '../../../projects', `${name}.json`), 'utf8'),
  );
  if (!read.ok) throw new Error(read.failure.reason);
  return read.value;
}
const judge = (document: LayoutDocument): Finding[] => findings(analyse(resolveLayout(document)), STYLE);

describe('what else a move puts right', () => {
  const low = demonstration('hairpins-box-too-low');
  const list = judge(low);
  const bump = list.find(
    ({ rule, remedy }) => rule === 'bump-steer-worst' && remedy?.kind === 'move',
  ) as Finding;

  test('is past its limit before and within it after, by the solved car', () => {
    const mended = alsoMended(low, bump, list, READER);
    expect(mended.map(({ rule }) => rule)).toContain('aim-height');
    expect(mended.map(({ rule }) => rule)).toContain('bump-steer-slope');
    // The slope worked out apart from the findings, degrees an inch.
    if (!bump.remedy) throw new Error('it has a move');
    const after = remedied(low, bump.remedy);
    const perInch = (document: LayoutDocument) => toDegrees(slope(document) * 25.4);
    expect(perInch(low)).toBeGreaterThan(LIMITS.bumpSteerSlope.usual);
    expect(perInch(after)).toBeLessThan(LIMITS.bumpSteerSlope.usual);
  });

  test('never names itself, what was in order, or what is still past its limit', () => {
    const mended = alsoMended(low, bump, list, READER);
    expect(mended).not.toContain(bump);
    if (!bump.remedy) throw new Error('it has a move');
    const still = judge(remedied(low, bump.remedy)).filter(({ severity }) => severity !== 'info');
    for (const { rule, part, severity } of mended) {
      expect(severity).not.toBe('info');
      expect(still.some((each) => each.rule === rule && each.part === part)).toBe(false);
    }
  });

  test('is nothing where the finding has no move', () => {
    const without = list.find(({ remedy }) => remedy?.kind !== 'move') as Finding;
    expect(alsoMended(low, without, list, READER)).toEqual([]);
  });
});

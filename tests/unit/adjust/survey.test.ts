import { describe, expect, test } from 'vitest';
import { readSurvey } from '../../../shared-math/adjust/index.ts';
import { refusalLine } from '../../../shared-math/layout/index.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';

const document = documentOf(rawLayout());
const survey = (...rows: unknown[]) => ({ format: 'toeboard-survey', version: 1, rows });
const straight = {
  id: 'a1',
  kind: 'straight',
  from: 'axle.left.kingpinTop',
  to: 'axle.right.kingpinTop',
  value: 1262,
};

describe('a survey that is not one', () => {
  test.each<[string, unknown, RegExp]>([
    ['nothing', null, /^not a survey/],
    ['a list', [], /^not a survey/],
    ['another format', { format: 'toeboard-layout' }, /^format: expected "toeboard-survey"/],
    ['a newer one', { ...survey(), version: 2 }, /^version: .*newer than this program reads/],
    ['an unknown key', { ...survey(), extra: 1 }, /unknown key "extra"/],
    [
      'an unknown kind',
      survey({ ...straight, kind: 'diagonal' }),
      /^rows\[0\] "a1".*diagonal|^rows\[0\] "a1" kind/,
    ],
    [
      'an unknown point',
      survey({ ...straight, to: 'axle.left.nose' }),
      /^rows\[0\] "a1": unknown point "axle.left.nose"/,
    ],
    [
      'a point of the shaft',
      survey({ id: 'a', kind: 'up', of: 'shaft.column.end', value: 3 }),
      /unknown point/,
    ],
    [
      'the same point twice',
      survey({ ...straight, to: straight.from }),
      /^rows\[0\] "a1": from and to are the same/,
    ],
    [
      'a negative length',
      survey(straight, { ...straight, id: 'b', value: -3 }),
      /^rows\[1\] "b" value: must be more than 0/,
    ],
    ['no length', survey({ ...straight, value: 0 }), /^rows\[0\] "a1" value: must be more than 0/],
    ['no doubt at all', survey({ ...straight, doubt: 0 }), /^rows\[0\] "a1" doubt: must be more than 0/],
    ['not a number', survey({ ...straight, value: '1262' }), /^rows\[0\] "a1" value: expected a number/],
    ['a name twice', survey(straight, straight), /^rows\[1\] "a1": a row of this name/],
    [
      'plumb points under one another',
      survey({ ...straight, kind: 'plumb', value: 49 }),
      /^rows\[0\] "a1": plumb points 49 mm apart/,
    ],
  ])('%s is refused by row and reason', (_, input, reason) => {
    const outcome = readSurvey(input, document);
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    const line = refusalLine(outcome.failure);
    expect(line).toMatch(reason);
    expect(line).not.toContain('\n');
  });
});

test('every kind is taken, with and without a doubt', () => {
  const rows = [
    { id: '1', kind: 'back', of: 'steering.dragLinkBall', value: 0 },
    { id: '2', kind: 'out', of: 'steering.dragLinkBall', value: 484, doubt: 0.1 },
    { id: '3', kind: 'up', of: 'steering.dragLinkBall', value: 395 },
    straight,
    { ...straight, id: '4', kind: 'plumb' },
    { ...straight, id: '5', kind: 'level', value: 0 },
    { ...straight, id: '6', kind: 'behind', value: -1 },
    { ...straight, id: '7', kind: 'across', value: -1262 },
    { id: '8', kind: 'arm', of: 'steering.dragLinkBall', side: 'left', value: 150 },
    { id: '9', kind: 'caster', side: 'right', value: 6 },
    { id: '10', kind: 'inclination', side: 'right', value: 8 },
    { id: '11', kind: 'steer-change', side: 'left', heave: 25, value: -0.1 },
  ];
  const outcome = readSurvey(survey(...rows), document);
  expect(outcome.ok && outcome.value.rows).toEqual(rows);
});

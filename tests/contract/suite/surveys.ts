import { expect, test } from 'vitest';
import type { CarSurvey } from '../../../shared-math/adjust/list/index.ts';
import { openStore } from '../../../src-main/store/index.ts';
import { sampleLayout } from '../../support/host-sample.ts';
import { begin, type OpenSession } from '../../support/host-session.ts';
import { failure, value } from '../../support/host-transports.ts';

function measured(height: number): CarSurvey {
  return {
    survey: {
      format: 'toeboard-survey',
      version: 1,
      rows: [
        { id: 'hub-height', kind: 'up', of: 'axle.left.wheelCentre', value: height, doubt: 0.8 },
        { id: 'caster', kind: 'caster', side: 'left', value: 6.5 },
      ],
    },
    taken: { 'hub-height': { way: 'tyre-height', typed: '26 1/8', figure: 2 * height } },
    alike: true,
  };
}

const EMPTY = { survey: { format: 'toeboard-survey', version: 1, rows: [] }, taken: {} };

export function surveyTests(open: OpenSession): void {
  test('a car begins without measurements; what is saved comes back, as typed too', async () => {
    const { call, reopen } = await open();
    const { carId } = await begin(call);
    expect(await value(call, 'survey.read', { carId })).toEqual({ carId, survey: EMPTY, revision: 0 });
    expect(await value(call, 'survey.save', { carId, survey: measured(331), revision: 0 })).toEqual({
      revision: 1,
    });
    expect(await value(await reopen(), 'survey.read', { carId })).toEqual({
      carId,
      survey: measured(331),
      revision: 1,
    });
  });

  test('two windows cannot overwrite each other unseen', async () => {
    const { call } = await open();
    const { carId } = await begin(call);
    await value(call, 'survey.save', { carId, survey: measured(331), revision: 0 });
    expect(await failure(call, 'survey.save', { carId, survey: measured(335), revision: 0 })).toBe(
      'changed-elsewhere: the measurements of Roadster have been changed in another window',
    );
    // Sent again because its answer was lost: it stands already.
    expect(await value(call, 'survey.save', { carId, survey: measured(331), revision: 0 })).toEqual({
      revision: 1,
    });
    expect(
      await value(call, 'survey.save', { carId, survey: measured(335), revision: 0, force: true }),
    ).toEqual({ revision: 2 });
    expect((await value(call, 'survey.read', { carId })).survey).toEqual(measured(335));
  });

  test.each([
    [
      'a row of no kind',
      { ...measured(3), survey: { ...measured(3).survey, rows: [{ id: 'a', kind: 'gauge' }] } },
    ],
    [
      'a doubt of nothing',
      { ...measured(3), taken: { a: { way: 'plain', typed: '', figure: 1, doubt: 0 } } },
    ],
    ['a key of its own', { ...measured(3), more: 1 }],
  ])('%s is refused in one line and changes nothing', async (_, survey) => {
    const { call } = await open();
    const { carId } = await begin(call);
    expect(await failure(call, 'survey.save', { carId, survey: survey as CarSurvey, revision: 0 })).toMatch(
      /^bad-request: survey\.save: survey[^\n]+$/,
    );
    expect((await value(call, 'survey.read', { carId })).revision).toBe(0);
  });

  test('a car that is not there is not found', async () => {
    const { call } = await open();
    const carId = '00000000-0000-4000-8000-000000000000';
    expect(await failure(call, 'survey.read', { carId })).toBe('not-found: this car no longer exists');
    expect(await failure(call, 'survey.save', { carId, survey: measured(3), revision: 0 })).toBe(
      'not-found: this car no longer exists',
    );
  });

  test('the bin and back, a duplicate, a file of the car: the measurements stay with the car', async () => {
    const { call } = await open();
    const { carId, customerId } = await begin(call);
    await value(call, 'survey.save', { carId, survey: measured(331), revision: 0 });
    await value(call, 'bin.put', { kind: 'car', id: carId });
    await value(call, 'bin.restore', { kind: 'car', id: carId });
    const { id: copy } = await value(call, 'car.duplicate', { id: carId });
    await value(call, 'survey.save', { carId, survey: measured(340), revision: 1 });
    expect((await value(call, 'survey.read', { carId: copy })).survey).toEqual(measured(331));

    const file = await value(call, 'file.exportCar', { id: copy });
    expect(JSON.parse(file.text)).toMatchObject({ format: 'toeboard-car', version: 3, ...measured(331) });
    const { variantIds } = await value(call, 'file.import', { ...file, customerId });
    const { carId: imported } = await value(call, 'variant.open', { id: variantIds[0] as string });
    expect((await value(call, 'survey.read', { carId: imported })).survey).toEqual(measured(331));
    expect(file).not.toHaveProperty('damaged');
  });

  test('a car file with a bad survey imports nothing and says where', async () => {
    const { call } = await open();
    const text = JSON.stringify({
      format: 'toeboard-car',
      version: 3,
      name: 'Bad',
      layouts: [sampleLayout()],
      survey: {
        format: 'toeboard-survey',
        version: 1,
        rows: [{ id: 'a', kind: 'up', of: 'x', value: 'high' }],
      },
    });
    expect(await failure(call, 'file.import', { text, fileName: 'bad.json' })).toBe(
      'refused-document: bad.json: car file: survey.rows[0].value: expected a number, found the text "high"',
    );
    expect((await value(call, 'shop.read', {})).customers).toEqual([]);
  });

  test('damaged measurements are told in one line, and do not take the car along', async () => {
    const { call, reopen, dataFolder } = await open();
    const { carId, id } = await begin(call);
    await value(call, 'survey.save', { carId, survey: measured(331), revision: 0 });
    const store = openStore({ folder: dataFolder });
    store.db.prepare('UPDATE car SET survey = ?').run('{"survey":{"rows":[');
    store.close();
    const again = await reopen();
    expect(await failure(again, 'survey.read', { carId })).toBe(
      'refused-document: Roadster: its stored measurements are damaged: they are no JSON',
    );
    expect((await value(again, 'variant.open', { id })).document).toEqual(sampleLayout());
    const file = await value(again, 'file.exportCar', { id: carId });
    expect(file.damaged).toEqual(['its measurements']);
    // Measured anew, they can be saved again.
    await value(again, 'survey.save', { carId, survey: measured(332), revision: 0, force: true });
    expect((await value(again, 'survey.read', { carId })).survey).toEqual(measured(332));
  });

  test('goes out as a table with what was typed, and a filled one is read line by line', async () => {
    const { call } = await open();
    const { id, carId } = await begin(call);
    const taken = { track: { way: 'plain', typed: '56 3/8 in', figure: 1431.9 } };
    const survey = { ...EMPTY, taken } as CarSurvey;
    await value(call, 'survey.save', { carId, survey, revision: 0 });
    const { fileName, text } = await value(call, 'survey.exportCsv', { id, unit: 'in' });
    expect(fileName).toBe('Roadster - What to measure.csv');
    const { lines } = await value(call, 'survey.readCsv', { text, fileName });
    expect(lines).toMatchObject([{ row: 'track', unit: 'in', figure: '56 3/8 in' }]);
    const refused = await failure(call, 'survey.readCsv', { text: 'a,b\n1,2', fileName: 'x\u202e.csv' });
    expect(refused).toMatch(/^refused-document: x.*\.csv: there is no column "row"/);
    expect(refused).not.toContain('\u202e');
  });
}

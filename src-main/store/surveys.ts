import { type CarSurvey, carSurveySchema, EMPTY_CAR_SURVEY } from '../../shared-math/adjust/list/index.ts';
import { refusalLine, refusalOf } from '../../shared-math/layout/index.ts';
import type { Bench } from './database.ts';
import { parsedJson, shownName } from './readable.ts';
import { StoreError } from './store-error.ts';

interface SurveyRowStored {
  readonly name: string;
  readonly survey: string | null;
  readonly survey_revision: number;
}

export interface StoredSurvey {
  readonly carId: string;
  readonly survey: CarSurvey;
  /** Counts the saves; 0 before the first. */
  readonly revision: number;
}

/** A stored survey as it can be used; throws one line where it is damaged. */
function readSurvey(name: string, text: string | null): CarSurvey {
  if (text === null) return EMPTY_CAR_SURVEY;
  const input = parsedJson(text);
  const read = carSurveySchema.safeParse(input);
  if (read.success) return read.data;
  const why = input === undefined ? 'they are no JSON' : refusalLine(refusalOf(read.error, input));
  throw new StoreError('refused-document', `${shownName(name)}: its stored measurements are damaged: ${why}`);
}

/** What was measured on each car: one survey a car, beside its variants. */
export function surveysIn({ db, write }: Bench) {
  const stored = db.prepare<[string], SurveyRowStored>(
    'SELECT name, survey, survey_revision FROM car WHERE id = ?',
  );
  const update = db.prepare<[string | null, number, string]>(
    'UPDATE car SET survey = ?, survey_revision = ? WHERE id = ?',
  );

  function row(carId: string): SurveyRowStored {
    const car = stored.get(carId);
    if (!car) throw new StoreError('not-found', 'this car no longer exists');
    return car;
  }

  return {
    read(carId: string): StoredSurvey {
      const { name, survey, survey_revision: revision } = row(carId);
      return { carId, survey: readSurvey(name, survey), revision };
    },

    /** As for variants: a save from an old revision is refused unless forced. A car in the bin still takes saves. */
    save: (carId: string, survey: CarSurvey, revision: number, force: boolean): { revision: number } =>
      write(() => {
        const car = row(carId);
        const text = JSON.stringify(survey);
        if (!force && car.survey_revision !== revision) {
          // Sent again because its answer was lost on the way: it stands already.
          if (car.survey === text) return { revision: car.survey_revision };
          throw new StoreError(
            'changed-elsewhere',
            `the measurements of ${shownName(car.name)} have been changed in another window`,
          );
        }
        update.run(text, car.survey_revision + 1, carId);
        return { revision: car.survey_revision + 1 };
      }),

    /** The survey of a car that has one: undefined if nothing was measured, or if what is stored is damaged. */
    readable(carId: string): CarSurvey | undefined {
      const { name, survey } = row(carId);
      try {
        return survey === null ? undefined : readSurvey(name, survey);
      } catch {
        return undefined;
      }
    },

    /** Whether what a car's survey is stored as cannot be read. */
    damaged(carId: string): boolean {
      return row(carId).survey !== null && this.readable(carId) === undefined;
    },

    /** Gives a car that is being made a survey. */
    begin: (carId: string, survey: CarSurvey): void =>
      write(() => {
        update.run(JSON.stringify(survey), 1, row(carId) && carId);
      }),
  };
}

export type Surveys = ReturnType<typeof surveysIn>;

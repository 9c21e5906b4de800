import { surveyList } from '../../../shared-math/adjust/list/index.ts';
import { shownText } from '../../../shared-math/outside/index.ts';
import { measuringCsv, readMeasuringCsv, safeFileName } from '../../files/index.ts';
import { StoreError } from '../../store/index.ts';
import type { Handlers, Program } from './handlers.ts';

type SurveyCalls = 'survey.read' | 'survey.save' | 'survey.exportCsv' | 'survey.readCsv';

export function surveyHandlers({ store }: Program): Pick<Handlers, SurveyCalls> {
  const { surveys, variants } = store;
  return {
    'survey.read': ({ carId }) => surveys.read(carId),
    'survey.save': ({ carId, survey, revision, force }) => surveys.save(carId, survey, revision, force),
    'survey.exportCsv': ({ id, unit }) => {
      const { document, carId, carName } = variants.open(id);
      const { survey } = surveys.read(carId);
      return {
        fileName: safeFileName(`${carName} - What to measure`, 'csv'),
        text: measuringCsv(surveyList(document), survey, unit),
      };
    },
    'survey.readCsv': ({ text, fileName }) => {
      const lines = readMeasuringCsv(text);
      if (!lines.ok) throw new StoreError('refused-document', `${shownText(fileName)}: ${lines.failure}`);
      return { lines: lines.value };
    },
  };
}

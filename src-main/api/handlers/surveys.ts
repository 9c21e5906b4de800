import type { Handlers, Program } from './handlers.ts';

export function surveyHandlers({ store }: Program): Pick<Handlers, 'survey.read' | 'survey.save'> {
  const { surveys } = store;
  return {
    'survey.read': ({ carId }) => surveys.read(carId),
    'survey.save': ({ carId, survey, revision, force }) => surveys.save(carId, survey, revision, force),
  };
}

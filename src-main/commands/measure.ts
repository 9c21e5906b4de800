import { type Adjustment, adjust, readSurvey, type Survey } from '../../shared-math/adjust/index.ts';
import { type LayoutDocument, refusalLine } from '../../shared-math/layout/index.ts';
import { parseJson, quoted } from '../../shared-math/outside/index.ts';
import { takeArguments } from './arguments.ts';
import { readLayoutFile, readText, shown } from './layout-file.ts';
import { type Answer, type Command, InputError, UsageError } from './usage.ts';

/** Characters. Four hundred rows are some forty thousand. */
const SURVEY_TEXT_MAX = 1_000_000;

function readSurveyFile(file: string, document: LayoutDocument): Survey {
  const text = readText(file, SURVEY_TEXT_MAX, 'a survey');
  const input = parseJson(text);
  if (!input.ok) throw new InputError(`${shown(file)}: not a survey: ${input.failure}`);
  const outcome = readSurvey(input.value, document);
  if (!outcome.ok) throw new InputError(`${shown(file)}: ${refusalLine(outcome.failure)}`);
  return outcome.value;
}

const HEAD = { format: 'toeboard-adjustment', version: 1 };

function answerOf({ document, points, rows, redundancy, bumpSteer }: Adjustment) {
  return { ...HEAD, layout: document, points: Object.fromEntries(points), rows, redundancy, bumpSteer };
}

function* answer(layoutFile: string, surveyFile: string): Answer {
  const document = readLayoutFile(layoutFile);
  const survey = readSurveyFile(surveyFile, document);
  const outcome = adjust(document, survey.rows);
  const reported = outcome.ok
    ? answerOf(outcome.value)
    : { ...HEAD, layout: document, status: outcome.failure.kind };
  yield `${JSON.stringify(reported, null, 2)}\n`;
}

export const measure: Command = {
  name: 'measure',
  usage: 'measure LAYOUT.json SURVEY.json [--json]',
  about:
    'The points that fit what was measured on the car best, how well each is known, and which row does not fit.',
  run(args) {
    const { words } = takeArguments(args, { values: [], flags: ['json'] });
    const [layout, survey, extra] = words;
    if (layout === undefined) throw new UsageError('a layout file is missing');
    if (survey === undefined) throw new UsageError('a survey file is missing');
    if (extra !== undefined)
      throw new UsageError(`one layout and one survey are taken: remove ${quoted(extra)}`);
    return answer(layout, survey);
  },
};

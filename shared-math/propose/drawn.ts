import { carOf } from './car.ts';
import { judge } from './judge.ts';
import type { ProposalFigures } from './proposal.ts';
import type { ProposeQuestion } from './question.ts';

/** The figures of the layout that was asked about, as it is drawn; undefined where it does not turn or reach. */
export function drawnFigures(question: ProposeQuestion): ProposalFigures | undefined {
  return judge(carOf(question), question.document).figures;
}

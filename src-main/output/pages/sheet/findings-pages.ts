import type { Finding } from '../../../../shared-math/findings/index.ts';
import { toDegrees } from '../../../../shared-math/units/index.ts';
import { groundsOf, poseWords, tallyWords } from '../../../../shared-math/words/index.ts';
import { type Block, heading, item, paragraph } from '../../flow/block.ts';
import { flowEvenly } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { severitySign } from '../../pens/signs.ts';
import { BODY, BODY_BOLD, BODY_SOFT, SMALL } from '../../pens/styles.ts';
import { guessedWords } from '../points.ts';
import type { SheetModel } from '../sheet-model.ts';

/** What its pages are called. */
export const FINDINGS_TITLE = 'Findings';

/** A finding with its limit, the limit's source, where it was measured, and what would mend it. */
export function findingBlock(model: SheetModel, finding: Finding): Block {
  const grounds = groundsOf(finding)
    .map(({ text }) => text)
    .join('');
  const { at } = finding;
  const pose =
    at &&
    poseWords(
      { heave: at.heave, roll: toDegrees(at.roll), handwheel: toDegrees(at.handwheel) },
      model.length,
    );
  return item(
    (pen, x, y) => severitySign(pen, finding.severity, x, y),
    [
      [finding.sentence, BODY_BOLD],
      [finding.advice, BODY],
      [[grounds, pose ? `measured at ${pose}` : ''].filter(Boolean).join(' · '), SMALL],
    ],
  );
}

/** The verdict: every finding with the limit that it is held to and where that comes from. */
export function findingsPages(pageFrame: PageFrame, model: SheetModel): void {
  const { findings } = model;
  const counts = { stop: 0, attention: 0, info: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  const open = findings.filter(({ severity }) => severity !== 'info');
  const settled = findings.filter(({ severity }) => severity === 'info');
  const guessed = guessedWords(model);
  flowEvenly(pageFrame, { title: FINDINGS_TITLE, lying: true }, 2, tallyWords(counts), [
    ...(guessed ? [paragraph(guessed, BODY_BOLD)] : []),
    heading('To fix, or to answer for'),
    ...(open.length > 0
      ? open.map((finding) => findingBlock(model, finding))
      : [paragraph('Nothing is past its limit. That is not an approval: see the cautions.', BODY_SOFT)]),
    heading('Within its limit'),
    ...settled.map((finding) => findingBlock(model, finding)),
  ]);
}

import {
  CASE_WORDS,
  type FigureReach,
  FORCES_CAUTION,
  FORCES_LEFT_OUT,
  type LinkForces,
  type LinkMargins,
  linkForces,
  linkMargins,
  loadWords,
  marginWords,
  NO_FORCES,
  reachWords,
} from '../../../../shared-math/forces/index.ts';
import { formatForce } from '../../../../shared-math/units/index.ts';
import { type Block, heading, paragraph } from '../../flow/block.ts';
import { Flow } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { type CellText, table } from '../../flow/table.ts';
import { BODY, BODY_BOLD, SMALL } from '../../pens/styles.ts';
import type { SheetModel } from '../sheet-model.ts';

/** A figure of a case, and under it how many times over a link bears it. */
function caseCell(
  { style }: SheetModel,
  reach: FigureReach | undefined,
  margins: LinkMargins | undefined,
  at: number,
): CellText {
  if (!reach) return 'not known';
  const { figure, light, heavy } = reach;
  const margin = margins?.cases[at];
  const times = margin ? marginWords(margin.light, margin.heavy) : '';
  return [
    [reachWords(figure, light, heavy, style.unit), BODY],
    ...(times ? [[`holds ${times}`, SMALL] as const] : []),
  ];
}

function forceTable(
  model: SheetModel,
  { cases, figures }: LinkForces,
  margins: readonly LinkMargins[],
): Block {
  const { unit } = model.style;
  return table(
    [
      { head: '', width: 1.5 },
      ...cases.map((each) => ({ head: `${CASE_WORDS[each.id]}: ${loadWords(each, unit)}`, width: 2 })),
      { head: 'Bears, as a strut and pulled', width: 1.3 },
    ],
    figures.map((figure, index) => {
      const own = margins.find((each) => each.figure.id === figure.id);
      return [
        [[figure.name, BODY_BOLD]],
        ...cases.map((each, at) => caseCell(model, each.figures[index], own, at)),
        own
          ? [
              [`push ${formatForce(own.bears.push, unit)}`, BODY],
              [`pull ${formatForce(own.bears.pull, unit)}`, BODY],
              ...(own.bears.assumed ? [['size assumed', SMALL] as const] : []),
            ]
          : '',
      ];
    }),
  );
}

function forceBlocks(model: SheetModel): Block[] {
  const forces = linkForces(model.frontEnd);
  if (!forces.ok) return [paragraph(`No forces: ${forces.failure.reason}.`, BODY)];
  const failures = forces.value.cases.flatMap(({ id, failure }) =>
    failure ? [paragraph(`${CASE_WORDS[id]}: not all of it, as ${NO_FORCES[failure.failure]}.`, BODY)] : [],
  );
  return [
    paragraph(FORCES_CAUTION, BODY_BOLD),
    ...failures,
    forceTable(model, forces.value, linkMargins(model.layout, forces.value)),
    heading('Left out'),
    paragraph(FORCES_LEFT_OUT.join(' '), SMALL),
  ];
}

/** What links, balls and shafts take in the three cases, and what each link bears. */
export function forcesPage(pageFrame: PageFrame, model: SheetModel): void {
  new Flow(
    pageFrame,
    { title: 'Link forces', lying: true },
    1,
    'At ride height, each as a range from the lighter load to the heavier',
  ).put(...forceBlocks(model));
}

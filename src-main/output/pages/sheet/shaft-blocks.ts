import { limitInForce } from '../../../../shared-math/findings/index.ts';
import type { ShaftDocument } from '../../../../shared-math/layout/index.ts';
import {
  checkMeetings,
  checkRoute,
  clockFreedom,
  cutList,
  endWords,
  type FitStatus,
  makingSteps,
  pieceWords,
  type Route,
  shaftTorques,
  sideWords,
  sizeWords,
  stockWords,
  supportList,
  turningOf,
} from '../../../../shared-math/shaft/index.ts';
import { formatDecimal, formatDegrees, toDegrees } from '../../../../shared-math/units/index.ts';
import { type Block, heading, item, paragraph } from '../../flow/block.ts';
import { warningSign } from '../../flow/page-frame.ts';
import { facts, table } from '../../flow/table.ts';
import { BODY, BODY_BOLD, SMALL } from '../../pens/styles.ts';
import { angle } from '../figures.ts';
import { axleLine, sided, usually } from '../points.ts';
import type { SheetModel } from '../sheet-model.ts';

// The steering shaft in tables: its route, clocking, cuts, ends and steps.

const FIT_WORDS: Record<FitStatus, string> = {
  fits: 'goes together',
  mismatch: 'does not go together',
  'trial-fit': 'trial fit first',
  untold: 'not described yet',
};

export function routeBlocks(model: SheetModel, shaft: ShaftDocument, route: Route): Block[] {
  const { length, both, job } = model;
  const check = checkRoute(shaft, route, limitInForce('shaftSpan', job.limits ?? {}).value);
  const place = ([x, y, z]: readonly [number, number, number]): [string, string, string] => [
    usually(length, axleLine(model) - x, 'ahead'),
    sided(length, y),
    length(z),
  ];
  const limits = limitInForce('jointSingle', job.limits ?? {});
  return [
    heading('Route, from the column to the box'),
    table(
      [
        { head: '', width: 1.4 },
        { head: 'Behind axle line', width: 1.15, align: 'right' },
        { head: 'From centre line', width: 1.5, align: 'right' },
        { head: 'Above ground', width: 1.1, align: 'right' },
        { head: 'True angle', width: 0.9, align: 'right' },
        { head: 'At most', width: 0.8, align: 'right' },
      ],
      [
        ['Column end', ...place(shaft.column.end), '', ''],
        ...route.joints.map(({ kind, centre, angle: true_, limit }, i) => [
          [[`Joint ${i + 1}, ${kind}`, BODY_BOLD]] as const,
          ...place(centre),
          [[angle(true_), BODY_BOLD]] as const,
          angle(limit, 0),
        ]),
        ['Box input', ...place(shaft.box.end), '', ''],
      ],
    ),
    paragraph(
      `Limits: ${limits.source}; a maker’s figure rules. Angles are those in space: a protractor on one view reads less.`,
      SMALL,
    ),
    facts([
      ...route.lengths.map((mm, i) => [`Shaft ${i + 1}, centre to centre`, both(mm)] as const),
      ...supportList(shaft, route).map(
        ({ shaft: index, fromColumnJoint }) =>
          [`Support on shaft ${index + 1}, from joint ${index + 1}`, both(fromColumnJoint)] as const,
      ),
      ...(check.support.because
        ? [['Supports called for', `${check.support.needed}; ${check.support.placed} drawn`] as const]
        : []),
      ...check.longSpans.map(
        ({ shaft: index, length: mm }) => [`Shaft ${index + 1}, longest free span`, both(mm)] as const,
      ),
    ]),
  ];
}

export function clockBlocks(shaft: ShaftDocument, route: Route): Block[] {
  const turning = turningOf(shaft, route);
  if (!turning.ok)
    return [
      heading('Clocking'),
      paragraph(`Joint ${turning.failure.joint + 1} is folded to a right angle: nothing turns.`),
    ];
  const { motion, best, bestClocks } = turning.value;
  const freedom = (index: number) => {
    const one = clockFreedom(shaft, index);
    if (one.kind === 'steps') return `in steps of ${formatDegrees(one.step)}`;
    return { free: 'freely, by the weld', flats: 'by the flats alone', untold: 'not given yet' }[one.kind];
  };
  const ratio = (value: number) => formatDecimal(value, 3);
  return [
    heading('Clocking'),
    ...(shaft.shafts.length > 0
      ? [
          table(
            [
              { head: '', width: 1 },
              { head: 'As drawn', width: 1, align: 'right' },
              { head: 'Least fluctuation', width: 1.2, align: 'right' },
              { head: 'Is set', width: 1.8, align: 'right' },
            ],
            shaft.shafts.map(({ clock }, i) => [
              `Shaft ${i + 1}`,
              [[formatDegrees(clock), BODY_BOLD]],
              formatDegrees(toDegrees(bestClocks[i] as number)),
              freedom(i),
            ]),
          ),
        ]
      : []),
    facts(
      [
        ['Speed at the box over that of the handwheel', `${ratio(motion.min)} to ${ratio(motion.max)}`],
        ['The same at best', `${ratio(best.min)} to ${ratio(best.max)}`],
        ['Swing, ahead of and behind an even turn', angle(motion.swing)],
      ],
      0.66,
    ),
    paragraph('Right-hand about the shaft, seen from the column to the box: clockwise is positive.', SMALL),
  ];
}

export function cutBlocks(model: SheetModel, shaft: ShaftDocument, route: Route): Block[] {
  const { style } = model;
  const size = (mm: number) => sizeWords(mm, style);
  const rows = cutList(shaft, route).flatMap((cut) =>
    cut.pieces.length > 0
      ? cut.pieces.map(({ name, length, slides }) => [
          name,
          [[model.both(length), BODY_BOLD]] as const,
          pieceOf(cut.shaft, slides),
        ])
      : [
          [
            `Shaft ${cut.shaft + 1}`,
            cut.noRoom > 0
              ? `no room: ${size(cut.noRoom)} short`
              : `measure first: ${cut.missing.join('; ')}`,
            stockOf(cut.shaft),
          ],
        ],
  );
  function stockOf(index: number): string {
    const stock = shaft.shafts[index]?.stock;
    return stock ? stockWords(stock, style) : 'stock not chosen yet';
  }
  function pieceOf(index: number, slides: 'outer' | 'inner' | undefined): string {
    const stock = shaft.shafts[index]?.stock;
    return stock ? pieceWords(stock, slides, style) : 'stock not chosen yet';
  }
  if (rows.length === 0)
    return [heading('Cut list'), paragraph('One joint: there is no shaft between column and box to cut.')];
  return [
    heading('Cut list'),
    table(
      [
        { head: 'Piece', width: 1.3 },
        { head: 'Tip to tip', width: 1.6, align: 'right' },
        { head: 'From', width: 2.2 },
      ],
      rows,
    ),
  ];
}

export function fitBlocks(model: SheetModel, shaft: ShaftDocument, route: Route): Block[] {
  const { style } = model;
  const ends = (part: 'column' | 'box') => shaft[part].fit;
  const endFact = (part: 'column' | 'box') => {
    const fit = ends(part);
    return fit ? endWords(fit, style) : 'not measured yet';
  };
  return [
    heading('Ends and splines'),
    facts(
      [
        ['Column end', endFact('column')],
        ['Box input', endFact('box')],
        ...shaft.joints.flatMap(({ columnSide, boxSide }, i) =>
          (
            [
              [`Joint ${i + 1}, column side`, columnSide],
              [`Joint ${i + 1}, box side`, boxSide],
            ] as const
          ).map(([name, side]) => [name, side ? sideWords(side, style) : 'not chosen yet'] as const),
        ),
      ],
      0.3,
    ),
    table(
      [
        { head: 'Where they meet', width: 1.3 },
        { head: '', width: 2.4 },
        { head: 'Engaged', width: 0.9, align: 'right' },
      ],
      checkMeetings(shaft, route, style).map(({ name, status, reason, engaged }) => [
        name,
        [
          [FIT_WORDS[status], status === 'fits' ? BODY : BODY_BOLD],
          [reason, SMALL],
        ],
        engaged === undefined ? 'not known' : sizeWords(engaged, style),
      ]),
    ),
  ];
}

/** The steps in their order, each with its number; what has to be known before them. */
export function stepBlocks(model: SheetModel, shaft: ShaftDocument, route: Route): Block[] {
  const all = makingSteps(shaft, route, model.style);
  const warnings = all.filter(({ kind }) => kind === 'warning');
  const steps = all.filter(({ kind }) => kind !== 'warning');
  return [
    ...(warnings.length > 0
      ? [
          heading('Before the steps'),
          ...warnings.map(({ sentence }) =>
            item((pen, x, y) => warningSign(pen, x, y + 0.4, 3), [[sentence, BODY]], 6.5),
          ),
        ]
      : []),
    heading('Steps, in this order'),
    ...steps.map(({ sentence }, i) =>
      item((pen, x, y) => pen.text(`${i + 1}`, x + 4.2, y, BODY_BOLD, 'right'), [[sentence, BODY]], 6.5),
    ),
  ];
}

/** A line tall enough to write on. */
const WRITING = { ...BODY, size: 11 };

/** What each bolt and screw is tightened to: the usual figure, and a blank for its maker's. */
export function torqueBlocks(model: SheetModel, shaft: ShaftDocument): Block[] {
  const torques = shaftTorques(shaft, model.style);
  if (torques.length === 0) return [];
  return [
    heading('Torques'),
    table(
      [
        { head: '', width: 2.0 },
        { head: '', width: 1.3 },
        { head: 'Usual', width: 1.1, align: 'right' },
        { head: 'Maker’s figure', width: 1.2, align: 'right' },
      ],
      torques.map(({ part, fastener, usual }) => [
        part,
        fastener,
        usual ?? 'not known',
        [['\u00a0', WRITING]] as const,
      ]),
    ),
    paragraph(
      'Usual: common practice, no published source. The maker’s figure rules: write it in first.',
      SMALL,
    ),
  ];
}

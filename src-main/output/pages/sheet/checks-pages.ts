import { createState, solveFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { toeLength } from '../../../../shared-math/sweep/index.ts';
import { formatToe, toDegrees } from '../../../../shared-math/units/index.ts';
import { cautionsOf } from '../../../../shared-math/words/index.ts';
import { type Block, drawn, heading, item, lead, paragraph, space } from '../../flow/block.ts';
import { Flow, flowEvenly } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { table } from '../../flow/table.ts';
import { tickBox } from '../../pens/signs.ts';
import { BODY, BODY_SOFT, CELL, ROW_RULE, SMALL } from '../../pens/styles.ts';
import { angle, lockWheels, steers, turnsWords } from '../figures.ts';
import type { SheetModel } from '../sheet-model.ts';

/** A line tall enough to write on. */
const WRITING = { ...BODY, size: 12 };

/** mm from one line to write on to the next. */
const RULED = 8;
const CAUTION_WORDS = { ...BODY, size: 9 };
const CAUTION_SOURCE = { ...SMALL, size: 7.6 };

type Checks = readonly (readonly [when: string, checks: readonly string[]])[];

/** What is checked by hand, in the order of the work. Common practice, no published source, but where a caution names one. */
function handChecks({ style, layout }: SheetModel): Checks {
  const early = style.unit === 'in' ? '50 miles (80 km)' : '80 km (50 miles)';
  const { stopAngle } = layout.steering;
  return [
    [
      'Wheels off the ground',
      [
        'Box on its high spot with the wheels straight ahead: half its turns to either side. Pitman arm on in that place, its nut locked, arm and shaft marked across.',
        'Every ball, rod end, nut and pin locked and cottered as it was made to be. Castle nuts tightened on to the slot, never back.',
        'Thread engaged seen or felt at every link end, both jam nuts tight.',
        'Lock to lock by hand at ride height: nothing binds, nothing touches.',
        'The same at full bump, at full droop, and with either wheel up alone: springs out or unloaded.',
        stopAngle === undefined
          ? 'Nothing stops the turn at the axle: the box or a link takes the blow. Stops fitted, or the reason written here.'
          : 'Stops at the axle touch first on both sides, before box, link or tyre.',
        'Steering shaft: bolts, screws and welds as the steps say; no joint at its limit, nothing rubs.',
      ],
    ],
    [
      'Wheels on the ground',
      [
        'Ride height as drawn. Toe, camber and caster measured and written beside the sheet’s figures.',
        'Lock to lock standing, then rolling at walking pace: the wheels come back by themselves, left and right alike.',
        'No play between handwheel and wheels but the box’s own.',
        'Bounced at each corner with the handwheel held: the wheels do not steer.',
      ],
    ],
    [
      `Once it has run ${early}`,
      [
        'Every nut, pin, bolt and screw of the steering and of the axle’s links looked at again, marks in line. The distance is common practice, no published source.',
        'Toe measured again. Balls, bushings and boots felt for play.',
        'Paint, tyres and lines looked over for signs of touching.',
      ],
    ],
  ];
}

/** A line to write on, with what is written there. */
function writingLine(what: string): Block {
  return drawn(11, (pen, x, y, width) => {
    const date = width * 0.7;
    pen.line(x, y + 7, x + date - 5, y + 7, CELL);
    pen.line(x + date, y + 7, x + width, y + 7, CELL);
    pen.text(what, x, y + 10, SMALL);
    pen.text('date', x + date, y + 10, SMALL);
  });
}

/** Lines to write on, down to the end of a column. */
function ruledLines(room: number): Block {
  const count = Math.max(0, Math.floor(room / RULED));
  return drawn(count * RULED, (pen, x, y, width) => {
    for (let i = 1; i <= count; i += 1) pen.line(x, y + i * RULED, x + width, y + i * RULED, ROW_RULE);
  });
}

function cautionBlocks(model: SheetModel): Block[] {
  const cautions = cautionsOf(model.layout);
  const printed = new Set<string>();
  return cautions.flatMap((caution, which) => [
    heading(caution.line),
    ...caution.notes
      .filter(({ words }, i) => {
        // What every caution ends with is reported once, at the very end.
        const last = i === caution.notes.length - 1 && which < cautions.length - 1;
        const shared = cautions.filter(({ notes }) => notes.some((note) => note.words === words)).length > 1;
        if ((last && shared) || printed.has(words)) return false;
        printed.add(words);
        return true;
      })
      .map(({ words, source }) =>
        item(
          (pen, x, y) => pen.circle(x + 1.2, y - 0.9, 0.45, undefined, BODY.colour),
          [
            [words, CAUTION_WORDS],
            [source, CAUTION_SOURCE],
          ],
          4.5,
          1.6,
        ),
      ),
  ]);
}

/** The sheet's figures with room to write what was measured on the car. */
function measuredBlocks(model: SheetModel): Block[] {
  const { layout, frontEnd, analysis, datum, length } = model;
  const state = createState();
  const settled = solveFrontEnd(frontEnd, 0, 0, 0, state) === 'ok';
  const { turn } = analysis;
  const toe = settled ? 2 * toeLength(state.totalToeIn / 2, layout.car.tyreRadius) : 0;
  const rows: (readonly [string, string])[] = [
    ...(datum.top === undefined ? [] : [['Frame top above ground, at the axle', length(datum.top)] as const]),
    ...(settled
      ? ([
          [
            'Total toe-in, front to rear of the tyres',
            formatToe(toe, toDegrees(state.totalToeIn), model.style.unit),
          ],
          ['Caster, left', angle(state.left.caster)],
          ['Caster, right', angle(state.right.caster)],
          ['Camber, left', angle(state.left.camber)],
          ['Camber, right', angle(state.right.camber)],
        ] as const)
      : []),
    ...(steers(turn)
      ? ([
          ['Inner wheel, left lock', angle(lockWheels(layout, turn.left).inner)],
          ['Inner wheel, right lock', angle(lockWheels(layout, turn.right).inner)],
          ['Turns, lock to lock', turnsWords(turn)],
        ] as const)
      : []),
  ];
  return [
    heading('Measured on the car'),
    table(
      [
        { head: '', width: 2.1 },
        { head: 'Sheet', width: 1.15, align: 'right' },
        { head: 'As built', width: 1, align: 'right' },
        { head: 'Later', width: 1, align: 'right' },
      ],
      rows.map(([what, value]) => [what, value, [['\u00a0', WRITING]] as const, '']),
    ),
  ];
}

/** Checked by hand before it is driven, what was measured, and who stands for it. */
export function checksPages(pageFrame: PageFrame, model: SheetModel): void {
  const flow = new Flow(
    pageFrame,
    { title: 'Checks and signatures', lying: true },
    3,
    'Ticked and written by hand, on the car',
  );
  const [off, ...later] = handChecks(model).map(([when, checks]) => [
    heading(when),
    ...checks.map((check) => item(tickBox, [[check, BODY]], 5.5, 2.6)),
  ]);
  const { notes } = model.layout;
  flow.put(...(off ?? []));
  // Notes that the column has no room for follow after the signatures, whole.
  const written = notes ? [paragraph(notes, BODY, 1)] : [];
  const here = flow.takes(heading('Notes'), ...written);
  const elsewhere = lead('They stand on the page after this one.', BODY_SOFT);
  if (here) flow.put(heading('Notes'), ...written);
  else if (flow.takes(heading('Notes'), elsewhere)) flow.put(heading('Notes'), elsewhere, space(0));
  if (flow.left > 2 * RULED) flow.put(ruledLines(flow.left - 2));
  flow.nextColumn();
  flow.put(...later.flat());
  if (flow.left > 3 * RULED) flow.put(ruledLines(flow.left - 2));
  flow.nextColumn();
  flow.put(
    ...measuredBlocks(model),
    heading('Signatures'),
    lead('A layout is no approval. Whoever signs has checked it on the car.', BODY_SOFT),
    writingLine('drawn by'),
    writingLine('built by'),
    writingLine('checked by'),
    writingLine('received by the customer'),
  );
  if (!here && notes)
    new Flow(pageFrame, { title: 'Notes', lying: true }, 3, 'The layout’s own').put(...written);
}

/** The cautions in full, each with where it comes from. */
export function cautionsPages(pageFrame: PageFrame, model: SheetModel): void {
  flowEvenly(
    pageFrame,
    { title: 'Cautions', lying: true },
    3,
    'Steering kills when it fails',
    cautionBlocks(model),
  );
}

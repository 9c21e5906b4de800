import { USUAL_INPUT_ANGLE } from '../../../../shared-math/layout/index.ts';
import { formatDegrees, MM_PER_INCH } from '../../../../shared-math/units/index.ts';
import { ASSIST_WORDS, wordsOf } from '../../../../shared-math/words/index.ts';
import { type Block, heading, paragraph } from '../../flow/block.ts';
import { facts, table } from '../../flow/table.ts';
import { BODY, BODY_BOLD, SMALL } from '../../pens/styles.ts';
import { angle, turnsWords } from '../figures.ts';
import { axisWords, pitmanFromPlumb } from '../links.ts';
import { axleLine, sided, usually } from '../points.ts';
import type { SheetModel } from '../sheet-model.ts';

const PRACTICE = 'common practice, no published source';

/** Threads that link ends come with, mm across; the least engagement is worked out from them. */
const THREADS: Record<'in' | 'mm', readonly (readonly [name: string, diameter: number])[]> = {
  in: [
    ['1/2 in', MM_PER_INCH / 2],
    ['5/8 in', (5 / 8) * MM_PER_INCH],
    ['11/16 in', (11 / 16) * MM_PER_INCH],
    ['3/4 in', (3 / 4) * MM_PER_INCH],
  ],
  mm: [
    ['M12', 12],
    ['M14', 14],
    ['M16', 16],
    ['M18', 18],
    ['M20', 20],
  ],
};

/** How much of a thread has to be in: what builders take on steering links, and the least in steel. */
export function threadBlocks({ style, both }: SheetModel): Block[] {
  return [
    heading('Thread engaged at each link end'),
    table(
      [
        { head: 'Thread', width: 1 },
        { head: 'Steering links: 1 1/2 diameters', width: 1.8, align: 'right' },
        { head: 'Least in steel: 1 diameter', width: 1.8, align: 'right' },
      ],
      THREADS[style.unit].map(([name, diameter]) => [
        name,
        [[both(1.5 * diameter), BODY_BOLD]],
        both(diameter),
      ]),
    ),
    paragraph(
      `One and a half diameters on steering links: ${PRACTICE}. One diameter in steel: a workmanship standard and FED-STD-H28. Never bottomed; drill or mark each tube so that the thread can be seen.`,
      SMALL,
    ),
  ];
}

/** Where the box is, how it lies, and its pitman arm. */
export function boxBlocks(model: SheetModel): Block[] {
  const { layout, datum, both, length } = model;
  const { box, stopAngle } = layout.steering;
  const [x, y, z] = box.sectorCentre;
  const face = datum.faceAt(x, y);
  const railTop = datum.topAt(x);
  const plumb = pitmanFromPlumb(layout);
  const degrees = (value: number) => formatDegrees(value);
  const rows: (readonly [string, string])[] = [
    ['Kind', `${wordsOf(ASSIST_WORDS, box.assist)}, ${box.ratio} to 1`],
    ['Sector centre behind axle line', usually(both, axleLine(model) - x, 'ahead')],
    ['From the car’s centre line', sided(both, y)],
    ...(face === undefined
      ? []
      : [['Outside the rail’s outer face, there', usually(both, Math.abs(y) - face, 'inside')] as const]),
    ['Above ground', both(z)],
    // No layout holds a box's casting: it is measured on the part.
    ['Mounting face to sector centre', 'measure on the box: __________'],
    ...(railTop === undefined
      ? []
      : [['Below the rail’s top, there', usually(both, railTop - z, 'above')] as const]),
    ['Sector axis', axisWords(box.sectorAxis, degrees)],
    [
      'Input to sector shaft',
      box.inputAngle === undefined ? `${USUAL_INPUT_ANGLE}°, assumed` : degrees(box.inputAngle),
    ],
    ['Sector travel, each way', formatDegrees(box.sectorTravel)],
    [
      'Pitman arm, box centred, wheels straight',
      plumb === undefined
        ? 'level'
        : angle(plumb.angle) === '0.0°'
          ? 'plumb'
          : `${angle(plumb.angle)} ${plumb.way} of plumb`,
    ],
    ['Handwheel, lock to lock', `${turnsWords(model.analysis.turn)} turns`],
    [
      'Stops at the axle',
      stopAngle === undefined ? 'none: the box takes the blow' : `${formatDegrees(stopAngle)} of wheel`,
    ],
    ['Handwheel, radius', length(layout.car.handwheelRadius)],
  ];
  return [
    heading('Steering box and pitman arm'),
    facts(rows, 0.5),
    paragraph(
      'Centre the box on its high spot before the pitman arm goes on: half the turns from end to end, wheels straight ahead.',
      BODY,
    ),
  ];
}

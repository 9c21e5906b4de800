import type { ShaftDocument } from '../layout/index.ts';
import { formatDecimal, formatDegrees, type LengthStyle } from '../units/index.ts';
import { clockFreedom, cutList, type EndWork, endWork, type ShaftCut, supportList } from './cuts.ts';
import { checkMeetings, jointEndName, meetingPlaces, shaftEndName } from './ends.ts';
import { NEWTON_METRES_PER_POUND_FOOT, NEWTON_METRES_PER_POUND_INCH, setScrewOf } from './fasteners.ts';
import type { Route } from './route.ts';
import { supportCheck } from './route-check.ts';
import { PINCH_BOLT_POUND_FEET, SLIP } from './usual.ts';
import { pieceWords, sizeWords } from './words.ts';

/** What a step is about, in the order of the work. */
export type StepKind =
  /** What has to be known or answered for, and is no work of its own. */
  | 'warning'
  | 'measure'
  | 'cut'
  | 'notch'
  | 'dimple'
  | 'support'
  | 'slip'
  | 'clock'
  | 'weld'
  | 'pinch-bolt'
  | 'set-screw'
  | 'check';

/** One step of the making: what it is about, on which part, in a plain sentence with its figures. */
export interface Step {
  readonly kind: StepKind;
  /** "Shaft 1", "Joint 1, the end at the box", or nothing for the whole. */
  readonly part: string;
  readonly sentence: string;
}

/** A torque in the reader's unit: "45 lb·ft", "61 N·m". */
export function torqueWords(newtonMetres: number, style: LengthStyle): string {
  if (style.unit === 'mm') return `${formatDecimal(newtonMetres, 0)} N·m`;
  const pounds = newtonMetres / NEWTON_METRES_PER_POUND_FOOT;
  return pounds >= 30
    ? `${formatDecimal(pounds, 0)} lb·ft`
    : `${formatDecimal(newtonMetres / NEWTON_METRES_PER_POUND_INCH, 0)} lb·in`;
}

function cutSteps(cuts: readonly ShaftCut[], shaft: ShaftDocument, style: LengthStyle): Step[] {
  const size = (mm: number) => sizeWords(mm, style);
  return cuts.flatMap((cut): Step[] => {
    const part = `Shaft ${cut.shaft + 1}`;
    const stock = shaft.shafts[cut.shaft]?.stock;
    if (cut.noRoom > 0)
      return [
        {
          kind: 'warning',
          part,
          sentence: `${part}: move its joints ${size(cut.noRoom)} and more apart: their ends meet before a shaft fits between.`,
        },
      ];
    if (cut.length === undefined)
      return [
        { kind: 'measure', part, sentence: `Measure before cutting ${part}: ${cut.missing.join('; ')}.` },
      ];
    return cut.pieces.map(({ name, length, slides }) => ({
      kind: 'cut',
      part: name,
      sentence: `Cut ${name}${stock ? ` from ${pieceWords(stock, slides, style)}` : ''}, ${size(length)} long. Deburr both ends.`,
    }));
  });
}

/** mm. Nearer to the bottom of its bore than this, a shaft is fully home. */
const HOME = 0.1;

/** How far a shaft's end is pushed into its joint, as drawn: what every figure on that end is measured for. */
export function seatWords({ place, engaged, bore }: EndWork, style: LengthStyle): string {
  if (engaged === undefined) return '';
  const deep = `${sizeWords(engaged, style)} into joint ${place.joint + 1}`;
  const short = bore === undefined ? 0 : bore - engaged;
  return short > HOME
    ? `push it ${deep}, as drawn, which is ${sizeWords(short, style)} short of fully home`
    : `push it fully home, ${deep}`;
}

function endSteps(work: EndWork, style: LengthStyle): Step[] {
  const part = shaftEndName(work.place);
  const size = (mm: number) => sizeWords(mm, style);
  const seat = seatWords(work, style);
  const joint = `joint ${work.place.joint + 1}`;
  const steps: Step[] = [];
  if (work.notch) {
    const { fromTip, depth, width, boltDiameter } = work.notch;
    steps.push({
      kind: 'notch',
      part,
      sentence: `${part}: ${seat}, mark through the bolt’s hole, and notch the round ${size(depth)} deep and ${size(width)} wide, its middle ${size(fromTip)} from the tip, until the ${size(boltDiameter)} bolt slides through freely: it has to cross the notch.`,
    });
  }
  if (work.dimple) {
    const { fromTip, depth, screwDiameter } = work.dimple;
    steps.push({
      kind: 'dimple',
      part,
      sentence: `${part}: ${seat}, mark through the hole of the set screw, and drill a dimple ${size(depth)} deep where the ${size(screwDiameter)} screw of ${joint} seats, ${size(fromTip)} from the tip.`,
    });
  }
  return steps;
}

/** How each intermediate shaft's yokes are set to one another; a warning where its ends leave no choice. */
export function clockSteps(shaft: ShaftDocument): Step[] {
  return shaft.shafts.map(({ clock }, index) => {
    const part = `Shaft ${index + 1}`;
    const freedom = clockFreedom(shaft, index);
    const [atColumn, atBox] = [`joint ${index + 1}`, `joint ${index + 2}`];
    const order =
      clock === 0
        ? `${part}: set the ears of its two yokes, in ${atColumn} and in ${atBox}, in one plane`
        : `${part}: looking from the column to the box, turn its yoke in ${atBox} by ${formatDegrees(Math.abs(clock))} ${clock > 0 ? 'clockwise' : 'counter-clockwise'} from its yoke in ${atColumn}`;
    if (freedom.kind !== 'steps')
      return freedom.kind === 'flats'
        ? {
            kind: 'warning',
            part,
            sentence: `${order}: flats at both ends leave no choice. Order the joints with their ears so, or take a welded or splined end.`,
          }
        : { kind: 'clock', part, sentence: `${order}, and mark it before it is fixed.` };
    return {
      kind: 'clock',
      part,
      sentence: `${order}. Its splines move it in steps of ${formatDegrees(freedom.step)}: take the nearest, at most ${formatDegrees(freedom.step / 2)} off.`,
    };
  });
}

function fixingSteps(shaft: ShaftDocument, works: readonly EndWork[], style: LengthStyle): Step[] {
  const steps: Step[] = [];
  const welded = works.filter(({ weld }) => weld).map(({ place }) => jointEndName(place));
  if (welded.length > 0)
    steps.push({
      kind: 'weld',
      part: welded.join('; '),
      sentence: `${welded.join('; ')}: tack, check the clock and that it runs true, then weld in short runs with pauses. Keep the joint’s needle bearings and seals cool: take the spider out, or wrap it in wet rag, and never let current pass through the needles.`,
    });
  if (welded.length > 0)
    steps.push({
      kind: 'warning',
      part: welded.join('; '),
      sentence: 'Welding is for a qualified welder, where the local rule allows it at all.',
    });
  if (works.some(({ dimple }) => dimple))
    steps.push({
      kind: 'warning',
      part: '',
      sentence: 'A second set screw at a right angle does not double the hold.',
    });
  for (const { place } of works) {
    const into = shaft.joints[place.joint]?.[place.side];
    const part = jointEndName(place);
    if (into?.kind === 'double-d-pinch-bolt' || into?.kind === 'spline-pinch-bolt')
      steps.push({
        kind: 'pinch-bolt',
        part,
        sentence: `${part}: tighten the pinch bolt; ${torqueWords(PINCH_BOLT_POUND_FEET * NEWTON_METRES_PER_POUND_FOOT, style)} is common for such a joint, the maker’s figure rules. A new locking nut each time.`,
      });
    if (into?.kind === 'double-d-set-screw' || (into?.kind === 'spline' && into.screw)) {
      const screw = into.screw && setScrewOf(into.screw.diameter);
      const torque = screw
        ? ` to ${torqueWords(screw.seatingTorque, style)} (a usual seating torque; the maker’s figure rules)`
        : '';
      steps.push({
        kind: 'set-screw',
        part,
        sentence: `${part}: thread lock on the set screw, seat it in its dimple${torque}, then its lock nut.`,
      });
    }
  }
  return steps;
}

function slipSteps(shaft: ShaftDocument, cuts: readonly ShaftCut[], style: LengthStyle): Step[] {
  const slides = shaft.shafts.some(({ stock }) => stock && 'slip' in stock && stock.slip);
  const size = (mm: number) => sizeWords(mm, style);
  const steps: Step[] = [];
  if (!slides)
    steps.push({
      kind: 'warning',
      part: '',
      sentence: `Nothing in this shaft slides. A frame that flexes and a column that collapses want ${size(SLIP.least)} to ${size(SLIP.usual)} of slip, or two angles in the run that can fold.`,
    });
  for (const { shaft: index, overlapShort } of cuts) {
    const stock = shaft.shafts[index]?.stock;
    const slip = stock && 'slip' in stock ? stock.slip : undefined;
    if (slip)
      steps.push({
        kind: 'slip',
        part: `Shaft ${index + 1}`,
        sentence:
          overlapShort > 0
            ? `Shaft ${index + 1}: let the two pieces overlap ${size(overlapShort)} more, so that an inch stays engaged when it is drawn out by its slip of ${size(slip.travel)}.`
            : `Shaft ${index + 1}: put its two pieces together with ${size(slip.overlap)} of overlap, free to slide ${size(slip.travel)}; mark it, so that it can be checked on the car.`,
      });
  }
  return steps;
}

/** A fastener of the shaft that is tightened to a figure: where, what, and what is usual. */
export interface ShaftTorque {
  readonly part: string;
  readonly fastener: string;
  /** In the reader's unit; undefined if none is known for its size. */
  readonly usual: string | undefined;
}

/** The bolts and set screws of a shaft's joints with the torque that is usual for each: its maker's figure rules. */
export function shaftTorques(shaft: ShaftDocument, style: LengthStyle): ShaftTorque[] {
  return meetingPlaces(shaft).flatMap((place): ShaftTorque[] => {
    const into = shaft.joints[place.joint]?.[place.side];
    const part = jointEndName(place);
    if (into?.kind === 'double-d-pinch-bolt' || into?.kind === 'spline-pinch-bolt') {
      const size = into.bolt ? ` ${sizeWords(into.bolt.diameter, style)}` : '';
      const usual = torqueWords(PINCH_BOLT_POUND_FEET * NEWTON_METRES_PER_POUND_FOOT, style);
      return [{ part, fastener: `pinch bolt${size}`, usual }];
    }
    if (into?.kind === 'double-d-set-screw' || (into?.kind === 'spline' && into.screw)) {
      const screw = into.screw && setScrewOf(into.screw.diameter);
      const size = into.screw ? ` ${sizeWords(into.screw.diameter, style)}` : '';
      return [
        { part, fastener: `set screw${size}`, usual: screw && torqueWords(screw.seatingTorque, style) },
      ];
    }
    return [];
  });
}

/**
 * How this shaft is made, step by step, as plain sentences with their figures in the reader's unit: measure, cut,
 * notch and dimple, bore the supports, clock, weld, bolt up, check. Each names its part and end. What is missing is asked for,
 * never guessed. What is no work but has to be known is of the kind `warning`, and stands before the steps.
 * Units:    mm in, `style` out.
 * Source:   common practice, no published source; set-screw torques as in fasteners.ts.
 * Checked:  tests/unit/shaft.test.ts.
 */
export function makingSteps(shaft: ShaftDocument, route: Route, style: LengthStyle): Step[] {
  const cuts = cutList(shaft, route);
  const works = meetingPlaces(shaft).map((place) => endWork(shaft, route, place));
  const size = (mm: number) => sizeWords(mm, style);
  const mismatches = checkMeetings(shaft, route, style).filter(({ status }) => status === 'mismatch');
  const support = supportCheck(shaft);
  const all: readonly Step[] = [
    ...mismatches.map(
      ({ name, reason, remedies }): Step => ({
        kind: 'warning',
        part: name,
        sentence: `${name} do not go together: ${reason}. ${remedies[0]?.sentence ?? ''}`.trim(),
      }),
    ),
    ...cutSteps(cuts, shaft, style),
    ...works.flatMap((work) => endSteps(work, style)),
    ...supportList(shaft, route).map(
      ({ shaft: index, fromColumnJoint, bore }): Step => ({
        kind: 'support',
        part: `Shaft ${index + 1}`,
        sentence: `Fix the support bearing on shaft ${index + 1}, ${size(fromColumnJoint)} from the centre of joint ${index + 1}${bore === undefined ? '' : `, bored ${size(bore)} so that the shaft slides in it, round and double-D alike`}. It must let the shaft tilt and slide.`,
      }),
    ),
    ...(support.byColumnBearing
      ? [
          {
            kind: 'warning',
            part: 'Column',
            sentence:
              'The double joint stands alone between column and box: the column’s own lower bearing has to be close to it.',
          } as const,
        ]
      : []),
    ...slipSteps(shaft, cuts, style),
    ...clockSteps(shaft),
    ...fixingSteps(shaft, works, style),
    {
      kind: 'check',
      part: '',
      sentence:
        'Turn from lock to lock with the wheels off the ground, at full bump and full droop: no bind, no touching, nothing slips at a mark. Check every bolt, nut and screw again after the first miles.',
    },
  ];
  const isWarning = ({ kind }: Step) => kind === 'warning';
  return [...all.filter(isWarning), ...all.filter((step) => !isWarning(step))];
}

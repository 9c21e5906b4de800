import type { JointSide, ShaftDocument, ShaftEnd, ShaftStock } from '../layout/index.ts';
import type { LengthStyle } from '../units/index.ts';
import type { Route } from './route.ts';
import { LOOSE_FROM, TIGHT_FROM } from './usual.ts';
import {
  endForSide,
  endWords,
  sideForEnd,
  sideWords,
  sizeBeside,
  sizeWords,
  toothSizeWords,
} from './words.ts';

/** Which end of a joint, shaft or stock: the one nearer the column, or nearer the box. */
export type Toward = 'column' | 'box';

/** Where a shaft's end meets a joint's end. */
export interface MeetingPlace {
  /** Whose end goes into the joint: the column's, the box's, or the intermediate shaft of that number. */
  readonly part: 'column' | 'box' | number;
  readonly joint: number;
  /** Which side of the joint it goes into. */
  readonly side: 'columnSide' | 'boxSide';
}

/** `untold`: one of the two is not described yet. `trial-fit`: nothing speaks against it, but a form is not known. */
export type FitStatus = 'fits' | 'mismatch' | 'trial-fit' | 'untold';

/** What would mend a mismatch: another end of the joint, another stock, a piece between, or the joint moved. */
export interface FitRemedy {
  readonly kind: 'joint-end' | 'stock' | 'adapter' | 'slide';
  readonly sentence: string;
}

export interface Meeting extends MeetingPlace {
  /** "Column and joint 1", "Shaft 1 and joint 2". */
  readonly name: string;
  readonly status: FitStatus;
  /** What is wrong or not known, with its figures; empty where it fits. */
  readonly reason: string;
  readonly remedies: readonly FitRemedy[];
  /** How deep the end sits in the joint, mm; undefined if it cannot be known. */
  readonly engaged: number | undefined;
}

/** The end that a piece of stock turns toward the column or the box. */
export function stockEnd(stock: ShaftStock, toward: Toward): ShaftEnd {
  const round = { kind: 'round', diameter: stock.diameter } as const;
  if (stock.kind === 'round') return round;
  if (stock.kind === 'double-d')
    return { kind: 'double-d', diameter: stock.diameter, acrossFlats: stock.acrossFlats };
  if (stock.ends !== 'both' && stock.ends !== toward) return round;
  if (stock.kind === 'double-d-end')
    return {
      kind: 'double-d',
      diameter: stock.diameter,
      acrossFlats: stock.acrossFlats,
      length: stock.formed,
    };
  const { form, teeth, pitch, module, diameter, formed } = stock;
  return {
    kind: 'spline',
    form,
    teeth,
    diameter,
    length: formed,
    ...(pitch === undefined ? {} : { pitch }),
    ...(module === undefined ? {} : { module }),
  };
}

/** Every meeting of a shaft, from column to box. */
export function meetingPlaces(shaft: ShaftDocument): MeetingPlace[] {
  const last = shaft.joints.length - 1;
  return shaft.joints.flatMap((_, joint): MeetingPlace[] => [
    { part: joint === 0 ? 'column' : joint - 1, joint, side: 'columnSide' },
    { part: joint === last ? 'box' : joint, joint, side: 'boxSide' },
  ]);
}

/** The two ends that meet at a place, where they are described. */
export function endsAt(shaft: ShaftDocument, place: MeetingPlace) {
  const { part, joint, side } = place;
  const stock = typeof part === 'number' ? shaft.shafts[part]?.stock : undefined;
  const end =
    typeof part === 'number'
      ? stock && stockEnd(stock, side === 'columnSide' ? 'box' : 'column')
      : shaft[part].fit;
  return { end, into: shaft.joints[joint]?.[side] };
}

/** How large a bore is, across. */
function boreOf(side: JointSide): number {
  return 'bore' in side ? side.bore : side.diameter;
}

/**
 * How deep an end sits in its joint, mm; undefined if dimensions are missing. An intermediate shaft is cut so that it
 * fills the bore, as far as its form goes; a column's or box's end sits as deep as the joint has been slid onto it.
 */
export function engagement(shaft: ShaftDocument, route: Route, place: MeetingPlace): number | undefined {
  const { end, into } = endsAt(shaft, place);
  if (into?.depth === undefined) return undefined;
  if (typeof place.part === 'number')
    return end?.length === undefined ? into.depth : Math.min(into.depth, end.length);
  return into.reach === undefined ? undefined : into.reach - route[place.part].along;
}

/** "Column and joint 1", as it is spoken of: counted from 1, from the column. */
export function meetingName({ part, joint }: MeetingPlace): string {
  const what = part === 'column' ? 'Column' : part === 'box' ? 'Box' : `Shaft ${part + 1}`;
  return `${what} and joint ${joint + 1}`;
}

/** An end of a joint: "Joint 1, the end at the box". */
export function jointEndName({ joint, side }: MeetingPlace): string {
  return `Joint ${joint + 1}, the end at the ${side === 'columnSide' ? 'column' : 'box'}`;
}

/** The shaft's end that goes into it: "Shaft 1, the end at the column, in joint 1", "Column shaft, in joint 1". */
export function shaftEndName({ part, joint, side }: MeetingPlace): string {
  const into = `in joint ${joint + 1}`;
  if (part === 'column') return `Column shaft, ${into}`;
  if (part === 'box') return `Box input, ${into}`;
  return `Shaft ${part + 1}, the end at the ${side === 'boxSide' ? 'column' : 'box'}, ${into}`;
}

type Verdict = Pick<Meeting, 'status' | 'reason' | 'remedies'>;

const FITS: Verdict = { status: 'fits', reason: '', remedies: [] };

/** Too small to go in, or so much too large that it rattles; undefined if it goes. */
function sizeProblem(what: string, bore: number, size: number, style: LengthStyle): string {
  const gap = bore - size;
  const [own, around] = [sizeBeside(size, bore, style), sizeBeside(bore, size, style)];
  if (gap < TIGHT_FROM) return `${what} ${own} does not go into ${around}`;
  if (gap > LOOSE_FROM)
    return `${what} ${own} is ${sizeBeside(gap, LOOSE_FROM, style)} loose in ${around}, more than ${sizeWords(LOOSE_FROM, style)}`;
  return '';
}

/** Splines of one count, form and pitch go together; where a form or pitch is not known a trial fit decides. */
function splineVerdict(
  end: Extract<ShaftEnd, { kind: 'spline' }>,
  into: Extract<JointSide, { teeth: number }>,
  style: LengthStyle,
): Verdict | { readonly problem: string } {
  if (end.teeth !== into.teeth)
    return { problem: `${end.teeth} teeth do not go into a spline of ${into.teeth}` };
  const known = end.form !== 'unidentified' && into.form !== 'unidentified';
  if (known && end.form !== into.form)
    return {
      problem: `the teeth are of different forms: ${endWords(end, style)} into ${sideWords(into, style)}`,
    };
  const [own, other] = [toothSizeWords(end), toothSizeWords(into)];
  if (end.pitch !== undefined && into.pitch !== undefined && end.pitch !== into.pitch)
    return {
      problem: `pitch ${end.pitch}/${2 * end.pitch} does not go into ${into.pitch}/${2 * into.pitch}`,
    };
  if (own !== '' && other !== '' && own !== other) return { problem: `${own} does not go into ${other}` };
  const size = sizeProblem('a spline of', into.diameter, end.diameter, style);
  if (size) return { problem: size };
  const pitched = end.form === 'serrated' || (own !== '' && other !== '');
  if (known && pitched) return FITS;
  return {
    status: 'trial-fit',
    reason: `the count is the same, ${end.teeth}, but ${known ? 'the pitch' : 'the form of the teeth'} is not known on both: trial-fit before ordering`,
    remedies: [],
  };
}

/** Whether the two forms go together, without their depth; or what speaks against it. */
function formVerdict(
  end: ShaftEnd,
  into: JointSide,
  style: LengthStyle,
): Verdict | { readonly problem: string } {
  if (into.kind === 'weld') {
    if (end.kind === 'double-d')
      return { problem: 'flats leave two gaps in a round bore, so the weld has nothing to hold there' };
    if (end.kind === 'spline') return { problem: 'a splined end does not belong in a round bore to weld' };
    const size = sizeProblem('round', into.bore, end.diameter, style);
    return size ? { problem: size } : FITS;
  }
  if ('acrossFlats' in into) {
    if (end.kind === 'round')
      return { problem: 'a round end has no flats and does not go into a double-D bore' };
    if (end.kind === 'spline') return { problem: 'a splined end does not go into a double-D bore' };
    const size =
      sizeProblem('double-D', into.bore, end.diameter, style) ||
      sizeProblem('across the flats,', into.acrossFlats, end.acrossFlats, style);
    return size ? { problem: size } : FITS;
  }
  if (end.kind !== 'spline')
    return { problem: `${endWords(end, style)} does not go into a ${sideWords(into, style)}` };
  return splineVerdict(end, into, style);
}

/** Whether an end goes into a joint's end by their forms, and what speaks against it. */
export interface EndsVerdict {
  readonly status: Exclude<FitStatus, 'untold'>;
  /** What is wrong or not known, with its figures; empty where they go together. */
  readonly reason: string;
}

/**
 * Judges one end against one joint's end by kind, diameter, flats, count and pitch, apart from any shaft and from how deep
 * the one sits in the other. Units: mm; `style` for the figures in the reason. Source, checks: as `checkMeetings`.
 */
export function judgeEnds(end: ShaftEnd, into: JointSide, style: LengthStyle): EndsVerdict {
  const form = formVerdict(end, into, style);
  if ('problem' in form) return { status: 'mismatch', reason: form.problem };
  return { status: form.status === 'fits' ? 'fits' : 'trial-fit', reason: form.reason };
}

/** What would mend two ends that do not go together. A column's and a box's end are what they are. */
function remediesFor(place: MeetingPlace, end: ShaftEnd, into: JointSide, style: LengthStyle): FitRemedy[] {
  const joint = `joint ${place.joint + 1}`;
  const toward = place.side === 'columnSide' ? 'column' : 'box';
  const list: FitRemedy[] = [
    {
      kind: 'joint-end',
      sentence: `Take ${joint} with ${sideForEnd(end, style)}, toward the ${toward}.`,
    },
  ];
  if (typeof place.part === 'number')
    list.push({
      kind: 'stock',
      sentence: `Take stock for shaft ${place.part + 1} with ${endForSide(into, style)}, toward the ${toward === 'column' ? 'box' : 'column'}.`,
    });
  if (into.kind !== 'weld' && end.kind !== 'round')
    list.push({
      kind: 'adapter',
      sentence: `Put an adapter between: ${endWords(end, style)} to ${sideWords(into, style)}.`,
    });
  return list;
}

/** Whether an end that fits sits deep enough, and not too deep. One diameter at the least: common practice. */
function depthVerdict(place: MeetingPlace, engaged: number, into: JointSide, style: LengthStyle): Verdict {
  const fixing = 'bolt' in into ? into.bolt : 'screw' in into ? into.screw : undefined;
  const held = fixing ? fixing.fromFace + fixing.diameter / 2 : 0;
  const least = Math.max(Math.min(boreOf(into), into.depth ?? Number.POSITIVE_INFINITY), held);
  const part = typeof place.part === 'number' ? `shaft ${place.part + 1}` : `the ${place.part}`;
  // Rounding of a joint that has been slid to the spot is no fault.
  const slack = 0.05;
  if (engaged < least - slack) {
    const why = held > 0 && least === held ? ', or its fixing does not cross it' : '';
    const short = sizeWords(Math.max(engaged, 0), style);
    const sits = engaged <= 0 ? `does not reach into the joint` : `sits only ${short} deep`;
    return {
      status: 'mismatch',
      reason: `${part} ${sits}; at least ${sizeWords(least, style)} is wanted${why}`,
      remedies: [
        typeof place.part === 'number'
          ? {
              kind: 'stock',
              sentence: `Take stock for ${part} whose formed end is at least ${sizeWords(least, style)} long.`,
            }
          : {
              kind: 'slide',
              sentence: `Slide joint ${place.joint + 1} ${sizeWords(least - engaged, style)} toward ${part}, or make ${part}’s end longer.`,
            },
      ],
    };
  }
  if (into.depth !== undefined && engaged > into.depth + slack)
    return {
      status: 'mismatch',
      reason: `${part} goes ${sizeWords(engaged - into.depth, style)} deeper than the bore: it would reach the spider`,
      remedies: [
        {
          kind: 'slide',
          sentence: `Slide joint ${place.joint + 1} ${sizeWords(engaged - into.depth, style)} away from ${part}, or shorten ${part}’s end.`,
        },
      ],
    };
  return FITS;
}

/**
 * Checks every meeting of an end with an end: kind, diameter, flats, spline count and pitch, depth of engagement.
 * Units:    mm; `style` for the figures in sentences.
 * Outcomes: each meeting fits, is a mismatch with its reason and what would mend it, asks for a trial fit, or is not
 *           reported because one of the two ends is not described.
 * Source:   common practice, no published source, as at each figure in usual.ts.
 * Checked:  tests/unit/shaft.test.ts.
 */
export function checkMeetings(shaft: ShaftDocument, route: Route, style: LengthStyle): Meeting[] {
  return meetingPlaces(shaft).map((place) => {
    const { end, into } = endsAt(shaft, place);
    const engaged = engagement(shaft, route, place);
    const head = { ...place, name: meetingName(place), engaged };
    if (!end || !into) {
      const what =
        !end && !into ? 'neither end is' : end ? 'the joint’s end is not' : 'the shaft’s end is not';
      return { ...head, status: 'untold', reason: `${what} described yet`, remedies: [] };
    }
    const form = formVerdict(end, into, style);
    if ('problem' in form)
      return {
        ...head,
        status: 'mismatch',
        reason: form.problem,
        remedies: remediesFor(place, end, into, style),
      };
    const depth = engaged === undefined ? FITS : depthVerdict(place, engaged, into, style);
    return { ...head, ...(depth.status === 'fits' ? form : depth) };
  });
}

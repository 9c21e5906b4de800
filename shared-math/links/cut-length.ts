import { failed, type Outcome, succeeded } from '../outcome.ts';
import type { EndMaking, LinkMaking, ThreadedMaking } from './making.ts';
import { ENGAGEMENT_WANTED } from './usual.ts';

/** What a threaded end has to spare where it is set, and at the ends of the adjustment wanted; mm. */
export interface EndRoom {
  /** Thread in the tube where it is set, and screwed out by the adjuster's range. */
  readonly engaged: number;
  readonly engagedLeast: number;
  /** One and a half diameters. */
  readonly wanted: number;
  /** Between the tube's end and the end of the thread, jam nut taken off: where it is set, and screwed in by the range. */
  readonly jamRoom: number;
  readonly jamRoomLeast: number;
  /** How far it can go out and in from where it is set, whatever is wanted. */
  readonly out: number;
  readonly in: number;
  /** What is short, if anything is. */
  readonly short: '' | 'thread' | 'jam-nut' | 'both';
  /** True if any of the figures that this rests on is assumed. */
  readonly assumed: boolean;
}

/** One figure that a cut length is made up of, in the order in which they are added or taken off. */
export interface CutStep {
  readonly of: 'centre-to-centre' | 'bend' | 'take-off';
  /** The end that a take-off is of. */
  readonly end?: EndMaking;
  /** mm; positive adds to the length. */
  readonly adds: number;
  readonly assumed: boolean;
}

export interface CutLength {
  /** mm; of a bent link along its middle line. */
  readonly cut: number;
  readonly assumed: boolean;
  readonly steps: readonly CutStep[];
  /** Of each end, in the link's order; undefined of a welded one, which has nothing to set. */
  readonly rooms: readonly [EndRoom | undefined, EndRoom | undefined];
  /** How much shorter and longer the link can be set with both ends' ranges; mm. */
  readonly shorter: number;
  readonly longer: number;
}

/** The thread and jam nut room of an end where its take-off sets it. mm. */
export function endRoom(end: ThreadedMaking): EndRoom {
  const { takeOff, reach, threadLength, jamNut, adjuster, thread } = end;
  const engaged = reach.value - takeOff.value;
  const wanted = ENGAGEMENT_WANTED * thread.value;
  const jamRoom = takeOff.value - (reach.value - threadLength.value) - jamNut.value;
  const engagedLeast = engaged - adjuster.value;
  const jamRoomLeast = jamRoom - adjuster.value;
  // Rounding of a take-off that is worked out to just fit is no shortage.
  const lacksThread = engagedLeast < wanted - 1e-9;
  const lacksRoom = jamRoomLeast < -1e-9;
  return {
    engaged,
    engagedLeast,
    wanted,
    jamRoom,
    jamRoomLeast,
    out: Math.max(0, engaged - wanted),
    in: Math.max(0, jamRoom),
    short: lacksThread && lacksRoom ? 'both' : lacksThread ? 'thread' : lacksRoom ? 'jam-nut' : '',
    assumed: [takeOff, reach, threadLength, jamNut, adjuster, thread].some(({ assumed }) => assumed),
  };
}

/**
 * How long a link's tube is cut, and why: centre to centre, a bend's longer way added, less what each end takes off.
 * A bend of offset o on a length L is taken as one bend in the middle, 2 √((L/2)² + o²) long; any other bend of that
 * offset is longer by little and at most L + 2 o.
 * Units:    mm. `centres` is the link's length between ball or bore centres.
 * Failures: `no-tube`: the ends take off more than there is.
 * Source:   own derivation; engagement of 1 1/2 diameters common practice, no published source.
 * Checked:  tests/unit/links.test.ts.
 */
export function cutLength(making: LinkMaking, centres: number): Outcome<CutLength, 'no-tube'> {
  const { ends, offset } = making;
  const bend = 2 * Math.hypot(centres / 2, offset.value) - centres;
  const steps: CutStep[] = [
    { of: 'centre-to-centre', adds: centres, assumed: false },
    ...(offset.value > 0 ? [{ of: 'bend', adds: bend, assumed: true } as const] : []),
    ...ends.map((end) => ({
      of: 'take-off' as const,
      end,
      adds: -end.takeOff.value,
      assumed: end.takeOff.assumed,
    })),
  ];
  const cut = steps.reduce((sum, { adds }) => sum + adds, 0);
  if (!(cut > 0)) return failed('no-tube');
  const [first, second] = ends.map((end) => (end.kind === 'threaded' ? endRoom(end) : undefined)) as [
    EndRoom | undefined,
    EndRoom | undefined,
  ];
  return succeeded({
    cut,
    assumed: steps.some(({ assumed }) => assumed),
    steps,
    rooms: [first, second],
    shorter: (first?.in ?? 0) + (second?.in ?? 0),
    longer: (first?.out ?? 0) + (second?.out ?? 0),
  });
}

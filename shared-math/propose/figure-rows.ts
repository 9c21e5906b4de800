import { rollSteerWords } from '../arrange/index.ts';
import {
  degreesBeside,
  formatDecimal,
  formatDegrees,
  formatForce,
  formatSpan,
  type LengthStyle,
  lengthBeside,
} from '../units/index.ts';
import type { ProposalFigures } from './proposal.ts';

// How proposals are shown beside the layout as it is drawn, on the screen and on the command line.

/** One figure of a proposal in the reader's units, and the same of the layout as drawn. */
export interface FigureRow {
  readonly what: string;
  readonly proposed: string;
  /** Undefined where the drawn layout has no such figure, or none is drawn. */
  readonly drawn: string | undefined;
  /** Undefined where neither is better than the other, or there is nothing to compare. */
  readonly better: boolean | undefined;
  /** Whether it is one of those that are looked at first. */
  readonly main: boolean;
}

/** A figure of a table: how it is read off, how it is written, and which way is better where one is. */
interface Kind {
  readonly what: string | ((style: LengthStyle) => string);
  of(figures: ProposalFigures): number | undefined;
  words(value: number, style: LengthStyle): string;
  readonly less?: boolean;
  readonly main?: boolean;
}

const degrees = (decimals: number) => (value: number) => degreesBeside(value, [0], decimals);

/** mm that points are off in the band: as the search has it. */
const OFF = 3.175;

const KINDS: readonly Kind[] = [
  { what: 'Worst bump steer', of: ({ bumpSteer }) => bumpSteer, words: degrees(2), less: true, main: true },
  {
    what: 'One wheel over a bump',
    of: ({ oneWheel }) => oneWheel,
    words: degrees(2),
    less: true,
    main: true,
  },
  {
    what: (style) => `Parts off by ${lengthBeside(OFF, [], style)}`,
    of: ({ band }) => band,
    words: degrees(2),
    less: true,
    main: true,
  },
  {
    what: 'Overall ratio',
    of: ({ overallRatio }) => overallRatio,
    words: (value) => `${formatDecimal(value, 1)} to 1`,
    main: true,
  },
  {
    what: 'Lock to lock',
    of: ({ turns }) => turns,
    words: (value) => `${formatDecimal(value, 2)} turns`,
    main: true,
  },
  {
    what: 'Circle between kerbs',
    of: ({ circle }) => circle,
    words: (value, { unit }) => formatSpan(value, unit),
    less: true,
    main: true,
  },
  {
    what: 'Parking, no assistance',
    of: ({ rimForceMost }) => rimForceMost,
    words: (value, { unit }) => formatForce(value, unit),
    less: true,
    main: true,
  },
  {
    what: 'Roll steer per degree',
    of: ({ rollSteer }) => rollSteer,
    words: rollSteerWords,
  },
  {
    what: 'Steers itself in a hard stop',
    of: ({ brakeSteer }) => (brakeSteer === undefined ? undefined : Math.abs(brakeSteer)),
    words: degrees(2),
    less: true,
  },
  { what: 'Inner wheel at lock', of: ({ innerLock }) => innerLock, words: degrees(1) },
  {
    what: 'Pitman arm to link, least',
    of: ({ pitmanTransmission }) => pitmanTransmission,
    words: degrees(0),
  },
  { what: 'Steering arm to link, least', of: ({ armTransmission }) => armTransmission, words: degrees(0) },
  { what: 'Ball tilt, most', of: ({ ballTilt }) => ballTilt, words: degrees(1), less: true },
];

/** Of a nearest pair, how far apart it stays. */
function nearestRow(
  { nearest }: ProposalFigures,
  drawn: ProposalFigures | undefined,
  style: LengthStyle,
): FigureRow {
  const words = (pair: NonNullable<ProposalFigures['nearest']>) =>
    `${pair.distance <= 0 ? 'touch' : lengthBeside(pair.distance, [pair.limit, 0], style)}: ${pair.words}`;
  return {
    what: 'Nearest two parts',
    proposed: nearest ? words(nearest) : 'none come near',
    drawn: drawn && (drawn.nearest ? words(drawn.nearest) : 'none come near'),
    better: undefined,
    main: false,
  };
}

function shaftRow(figures: ProposalFigures, drawn: ProposalFigures | undefined): FigureRow {
  const words = ({ shaftJoints, supports }: ProposalFigures) => {
    if (shaftJoints.length === 0) return 'none laid';
    const joints = `${shaftJoints.length} ${shaftJoints.length === 1 ? 'joint' : 'joints'}`;
    const bearings = supports === 0 ? '' : `, ${supports} ${supports === 1 ? 'bearing' : 'bearings'}`;
    return `${joints}${bearings}, bent ${formatDegrees(Math.max(...shaftJoints), 0)} at the most`;
  };
  return {
    what: 'Steering shaft',
    proposed: words(figures),
    drawn: drawn && words(drawn),
    better: undefined,
    main: false,
  };
}

/**
 * The figures of a proposal beside those of the layout as drawn, in the reader's units. A figure that was not found reads "not
 * worked out", never 0.
 * Units: figures in degrees, mm, N. `drawn` undefined: nothing is drawn that steers.
 */
export function figureRows(
  figures: ProposalFigures,
  drawn: ProposalFigures | undefined,
  style: LengthStyle,
): FigureRow[] {
  const rows = KINDS.map(({ what, of, words, less, main = false }): FigureRow => {
    const [value, other] = [of(figures), drawn && of(drawn)];
    const [proposed, beside] = [value, other].map((each) =>
      each === undefined ? 'not worked out' : words(each, style),
    );
    const compared = value !== undefined && other !== undefined && proposed !== beside && less !== undefined;
    return {
      what: typeof what === 'string' ? what : what(style),
      main,
      proposed: proposed as string,
      drawn: drawn && beside,
      better: compared ? value < other === less : undefined,
    };
  });
  return [...rows, nearestRow(figures, drawn, style), shaftRow(figures, drawn)];
}

import type { SurveyRow } from '../survey.ts';

// Within what figures of a hand-built car with a solid front axle lie, from a light one to a heavy one and with room to spare:
// common practice, no published source. A figure outside is not wrong for that; it is asked about once.

/** mm or degrees. */
export type UsualRange = readonly [least: number, most: number];

type PlaceKind = 'back' | 'out' | 'up';
type Places = Readonly<Record<PlaceKind, UsualRange>>;

/** Of points by the end of their name, mm. What turns with the wheel stands near the hubs' line; the frame's points do not. */
const PLACES: Readonly<Record<string, Places>> = {
  wheelCentre: { back: [-50, 50], out: [400, 1100], up: [190, 520] },
  kingpinTop: { back: [-100, 100], out: [300, 950], up: [150, 750] },
  kingpinBottom: { back: [-100, 100], out: [300, 950], up: [75, 650] },
  tieRodBall: { back: [-350, 350], out: [250, 950], up: [75, 700] },
  dragLinkBall: { back: [-400, 400], out: [200, 950], up: [75, 800] },
  pitmanBall: { back: [-1000, 1900], out: [-500, 950], up: [75, 1100] },
  sectorCentre: { back: [-1000, 1900], out: [-500, 950], up: [100, 1200] },
};
/** Of all other points: of rods, springs and bars. */
const OTHER_PLACES: Places = { back: [-1500, 2500], out: [-950, 1100], up: [25, 1000] };

/** A pair of points across the car, mm apart. */
const APART: Readonly<Record<string, UsualRange>> = {
  wheelCentre: [900, 2000],
  kingpinTop: [700, 1800],
  kingpinBottom: [700, 1800],
  tieRodBall: [550, 1900],
};

const ARM: UsualRange = [50, 400];
const CASTER: UsualRange = [-5, 18];
const INCLINATION: UsualRange = [-2, 20];

const endOf = (point: string) => point.slice(point.lastIndexOf('.') + 1);

/** Within what such a figure usually lies; undefined of what has no usual measure. */
export function usualRange(row: SurveyRow): UsualRange | undefined {
  switch (row.kind) {
    case 'back':
    case 'out':
    case 'up':
      return (PLACES[endOf(row.of)] ?? OTHER_PLACES)[row.kind];
    case 'arm':
    case 'sector-arm':
      return ARM;
    case 'caster':
      return CASTER;
    case 'inclination':
      return INCLINATION;
    case 'straight':
      return endOf(row.from) === endOf(row.to) ? APART[endOf(row.from)] : undefined;
    default:
      return undefined;
  }
}

/** A figure that lies where such cars have none. */
export interface FarQuestion {
  readonly id: string;
  readonly usual: UsualRange;
}

/** Rows whose figures lie outside what such cars have, without those that are answered or asked about already. */
export function farQuestions(rows: readonly SurveyRow[], answered: ReadonlySet<string>): FarQuestion[] {
  return rows.flatMap((row) => {
    const usual = usualRange(row);
    const far = usual && (row.value < usual[0] || row.value > usual[1]);
    return far && !answered.has(row.id) ? [{ id: row.id, usual }] : [];
  });
}

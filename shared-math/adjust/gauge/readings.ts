import { z } from 'zod';
import { type Refusal, refusalOf, type Side } from '../../layout/index.ts';
import { failed, type Outcome, succeeded } from '../../outcome.ts';
import { quoted } from '../../outside/index.ts';
import { COORDINATE_MAX } from '../../tolerances.ts';
import { type Degrees, toDegrees } from '../../units/index.ts';

/** The version of the readings that this program writes, and the newest that it reads. */
export const GAUGE_VERSION = 1;
export const GAUGE_ROWS_MAX = 200;

const name = z.string().trim().min(1).max(80);
const side = z.enum(['left', 'right']);
const length = z.number().min(-COORDINATE_MAX).max(COORDINATE_MAX);
const span = z.number().min(50).max(2000);
const angle = z.number().min(-45).max(45);
const doubt = z.number().positive().max(100);

const gauge = z.discriminatedUnion('kind', [
  /** Reads the wheel's angle itself. */
  z.strictObject({ kind: z.literal('angle'), doubt: doubt.optional() }),
  /** Two dials against a plate on the hub, one ahead of the other by `spacing` mm. */
  z.strictObject({ kind: z.literal('dials'), spacing: span, doubt: doubt.optional() }),
  /** The rim's front and rear edge against a line beside the wheel; `spacing` is the rim's diameter there. */
  z.strictObject({ kind: z.literal('edges'), spacing: span, doubt: doubt.optional() }),
]);

const station = z.strictObject({
  id: name,
  side,
  /** mm; bump is positive. */
  heave: length,
  /** Degrees: toe-in gained since ride height (an angle gauge). */
  toeIn: angle.optional(),
  /** mm that the front and the rear have moved away from the car's centre plane since ride height (dials, edges). */
  front: length.optional(),
  rear: length.optional(),
});

/** A turn on the plates: how far each wheel has turned from straight ahead, degrees, both positive in the turn's direction. */
const plate = z.strictObject({
  id: name,
  turn: side,
  left: z.number().min(0).max(80),
  right: z.number().min(0).max(80),
});

export const gaugeSchema = z.strictObject({
  format: z.literal('toeboard-gauge'),
  version: z.literal(GAUGE_VERSION),
  gauge,
  stations: z.array(station).max(GAUGE_ROWS_MAX),
  plates: z.array(plate).max(GAUGE_ROWS_MAX),
  /** Degrees: what one reading of a plate leaves in doubt. */
  plateDoubt: doubt.optional(),
});

/** What was read on the finished car, at ride height and over bump and droop, and on turning plates. */
export type GaugeReadings = z.infer<typeof gaugeSchema>;
export type Gauge = GaugeReadings['gauge'];
export type GaugeStation = GaugeReadings['stations'][number];
export type PlateReading = GaugeReadings['plates'][number];

/**
 * What one reading of each gauge usually leaves in doubt, one standard deviation: degrees of an angle, mm of a dial, mm
 * of an edge against a line, degrees of a plate. Common practice, no published source.
 */
export const USUAL_GAUGE_DOUBT = { angle: 0.05, dials: 0.05, edges: 0.8, plate: 0.5 } as const;

/**
 * Takes parsed JSON as readings of a gauge; every station must have what its gauge reads.
 * Outcomes: the readings, or the first refusal by path and reason. The input is not changed.
 */
export function readGaugeReadings(input: unknown): Outcome<GaugeReadings, Refusal> {
  if (typeof input !== 'object' || input === null || Array.isArray(input))
    return failed({ path: '', reason: 'not a gauge’s readings: expected an object { }' });
  const parsed = gaugeSchema.safeParse(input);
  if (!parsed.success) return failed(refusalOf(parsed.error, input));
  const readings = parsed.data;
  const names = new Set<string>();
  for (const [index, row] of readings.stations.entries()) {
    const path = `stations[${index}] ${quoted(row.id)}`;
    const wants = readings.gauge.kind === 'angle' ? (['toeIn'] as const) : (['front', 'rear'] as const);
    for (const field of wants)
      if (row[field] === undefined)
        return failed({ path, reason: `${field} is missing: this gauge reads ${wants.join(' and ')}` });
  }
  for (const [list, rows] of [
    ['stations', readings.stations],
    ['plates', readings.plates],
  ] as const)
    for (const [index, row] of rows.entries()) {
      if (names.has(row.id))
        return failed({
          path: `${list}[${index}] ${quoted(row.id)}`,
          reason: 'a reading of this name stands above: every reading needs its own',
        });
      names.add(row.id);
    }
  return succeeded(readings);
}

/** A station as the steer that its wheel gained since ride height: positive to the left, as all steer. */
export interface SteerReading {
  readonly id: string;
  readonly side: Side;
  /** mm. */
  readonly heave: number;
  readonly change: Degrees;
  /** One standard deviation. */
  readonly doubt: Degrees;
}

/**
 * Makes steer of a station's reading. A left wheel that toes in turns to the right, which is negative steer; a right
 * wheel that toes in turns to the left. Front and rear moved out by f and r over a spacing s turn the wheel out by
 * atan((f - r)/s); the doubts u of both readings make √2 u cos²(angle)/s of it.
 */
export function steerReading(gauge: Gauge, station: GaugeStation): SteerReading {
  const { id, side, heave } = station;
  const inward = side === 'left' ? -1 : 1;
  const own = gauge.doubt ?? USUAL_GAUGE_DOUBT[gauge.kind];
  if (gauge.kind === 'angle')
    return { id, side, heave, change: inward * (station.toeIn as number), doubt: own };
  const slope = ((station.front as number) - (station.rear as number)) / gauge.spacing;
  return {
    id,
    side,
    heave,
    change: toDegrees(-inward * Math.atan(slope)),
    doubt: toDegrees((Math.SQRT2 * own) / gauge.spacing / (1 + slope * slope)),
  };
}

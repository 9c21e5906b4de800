import {
  compareGauge,
  explainReadings,
  forecastStations,
  type Gauge,
  type GaugeComparison,
  type GaugeExplanation,
  type GaugeReadings,
  type GaugeStation,
  gaugeStations,
  type PlateReading,
} from '../../../../shared-math/adjust/gauge/index.ts';
import { adjust, type SteerChange } from '../../../../shared-math/adjust/index.ts';
import { rowsFor } from '../../../../shared-math/adjust/list/index.ts';
import type { Layout, LayoutDocument, Side } from '../../../../shared-math/layout/index.ts';
import { toDegrees } from '../../../../shared-math/units/index.ts';
import type { Measuring } from '../../../document/measuring.svelte.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';

const NOTHING_READ: GaugeReadings = {
  format: 'toeboard-gauge',
  version: 1,
  gauge: { kind: 'angle' },
  stations: [],
  plates: [],
};

/** mm within which two heaves are one station. */
const SAME_STATION = 0.05;
/** ms of quiet after a change of the drawing before readings are held against it. */
const QUIET = 120;
/** Heaves of the computed curve. */
const CURVE_HEAVES = 25;

/** One station of the list: what should be read there and what was. Degrees of toe-in gained since ride height. */
export interface StationRow {
  /** mm. */
  readonly heave: number;
  /** Undefined where the linkage does not reach. */
  readonly computed: number | undefined;
  readonly reading: GaugeStation | undefined;
}

/** A place of the computed curve: mm, degrees of toe-in gained, and one standard deviation of it where that is known. */
export interface CurvePoint {
  readonly heave: number;
  readonly toeIn: number;
  readonly doubt: number | undefined;
}

/** The finished car: what a gauge and turning plates read on it, beside what the open layout says. */
export class FinishedCar {
  readonly #openLayout: OpenLayout;
  readonly #measuring: Measuring;
  /** Which wheel's stations are shown. */
  side: Side = $state('left');
  /** Stations that were asked for beside the usual ones, mm. */
  #more: readonly number[] = $state.raw([]);
  /** The layout as it stood at rest last: adjusting and explaining have no place inside a drag. */
  #atRest: { readonly document: LayoutDocument | null; readonly layout: Layout };
  #timer: ReturnType<typeof setTimeout> | undefined;

  readings: GaugeReadings = $derived.by(() => this.#measuring.car.gauge ?? NOTHING_READ);

  stations: readonly StationRow[] = $derived.by(() => {
    const { layout, settings } = this.#openLayout;
    const read = this.readings.stations.filter(({ side }) => side === this.side);
    const heaves = [...gaugeStations(layout.travel, settings.unit)];
    for (const heave of [...this.#more, ...read.map((station) => station.heave)])
      if (!heaves.some((each) => Math.abs(each - heave) < SAME_STATION)) heaves.push(heave);
    heaves.sort((a, b) => b - a);
    return forecastStations(layout, heaves).map(({ heave, [this.side]: gained }) => ({
      heave,
      computed: gained === null ? undefined : toDegrees(gained),
      reading: read.find((station) => Math.abs(station.heave - heave) < SAME_STATION),
    }));
  });

  /** The adjustment's rows, if anything was measured that says how well the layout itself is known. */
  #rows = $derived.by(() => {
    const { document } = this.#atRest;
    const rows = document ? rowsFor(document, this.#measuring.car).rows : [];
    return rows.filter(({ kind }) => kind !== 'steer-change');
  });

  /** Covariance of the computed changes, degrees²; undefined if nobody measured the car. */
  #doubtOf(changes: readonly SteerChange[]): Float64Array | undefined {
    const { document } = this.#atRest;
    if (!document || this.#rows.length === 0 || changes.length === 0) return undefined;
    const aside = new Set(this.#measuring.found?.misfits.map(({ id }) => id));
    const outcome = adjust(document, this.#rows, { aside, pointsOnly: true, changes });
    return outcome.ok ? (outcome.value.changes ?? undefined) : undefined;
  }

  comparison: GaugeComparison | { readonly trouble: string } | undefined = $derived.by(() => {
    const { document } = this.#atRest;
    const { readings } = this;
    if (!document || readings.stations.length + readings.plates.length === 0) return undefined;
    const changes = readings.stations.map(({ side, heave }) => ({ of: side, heave }));
    const outcome = compareGauge(document, readings, this.#doubtOf(changes));
    if (outcome.ok) return outcome.value;
    if (outcome.failure.kind === 'nothing-read') return undefined;
    return { trouble: this.#nameOf(outcome.failure.reading) };
  });

  /** What would explain the readings; undefined while they agree or are too few to say. */
  explanation: GaugeExplanation | undefined = $derived.by(() => {
    const { document } = this.#atRest;
    const { comparison } = this;
    if (!document || !comparison || 'trouble' in comparison || comparison.agrees) return undefined;
    const outcome = explainReadings(document, this.readings);
    return outcome.ok ? outcome.value : undefined;
  });

  /** The computed curve of the wheel that is shown, lowest first, as far as the linkage reaches. */
  curve: readonly CurvePoint[] = $derived.by(() => {
    const { layout } = this.#atRest;
    const { bump, rebound } = layout.travel;
    const heaves = Array.from(
      { length: CURVE_HEAVES },
      (_, i) => -rebound + ((bump + rebound) * i) / (CURVE_HEAVES - 1),
    );
    const reached = forecastStations(layout, heaves).flatMap(({ heave, [this.side]: gained }) =>
      gained === null ? [] : [{ heave, toeIn: toDegrees(gained) }],
    );
    const square = this.#doubtOf(reached.map(({ heave }) => ({ of: this.side, heave })));
    return reached.map((at, i) => ({
      ...at,
      doubt: square ? Math.sqrt(Math.max(0, square[i * reached.length + i] as number)) : undefined,
    }));
  });

  constructor(openLayout: OpenLayout, measuring: Measuring) {
    this.#openLayout = openLayout;
    this.#measuring = measuring;
    this.#atRest = $state.raw({ document: openLayout.document, layout: openLayout.layout });
  }

  /** Run as an effect: takes the layout up once it has come to rest. */
  followLayout(): void {
    const { document, layout } = this.#openLayout;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.#atRest = { document, layout };
    }, QUIET);
  }

  #nameOf(reading: string): string {
    const station = this.readings.stations.find(({ id }) => id === reading);
    if (station) return this.stationWords(station.heave);
    const plate = this.readings.plates.find(({ id }) => id === reading);
    return plate ? `the turn to the ${plate.turn}` : reading;
  }

  /** "1 1/2 in of bump", "ride height". */
  stationWords(heave: number): string {
    const size = this.#openLayout.length(Math.abs(heave));
    return heave === 0 ? 'ride height' : `${size} of ${heave > 0 ? 'bump' : 'droop'}`;
  }

  #keep(change: Partial<GaugeReadings>): void {
    this.#measuring.setGauge({ ...this.readings, ...change });
  }

  /** Changes the gauge. Refused in a sentence while stations stand that another kind of gauge has read. */
  setGauge(gauge: Gauge): boolean {
    const reads = (kind: Gauge['kind']) => (kind === 'angle' ? 'angle' : 'lengths');
    const others = reads(gauge.kind) !== reads(this.readings.gauge.kind);
    if (others && this.readings.stations.length > 0) {
      this.#openLayout.tell(
        'Clear the stations first: what stands there was read with another kind of gauge.',
      );
      return false;
    }
    this.#keep({ gauge });
    return true;
  }

  /** Adds a station to the list, mm. */
  addStation(heave: number): void {
    this.#more = [...this.#more, heave];
  }

  /** Sets one figure of a station, or clears it; a station of which nothing is left was not read. */
  setReading(heave: number, field: 'toeIn' | 'front' | 'rear', figure: number | undefined): void {
    const { stations } = this.readings;
    const { side } = this;
    const at = stations.findIndex(
      (station) => station.side === side && Math.abs(station.heave - heave) < SAME_STATION,
    );
    const { [field]: _, ...before } = stations[at] ?? { id: this.#freeId(side, heave), side, heave };
    const next: GaugeStation = figure === undefined ? before : { ...before, [field]: figure };
    const others = stations.filter((_, i) => i !== at);
    const empty = next.toeIn === undefined && next.front === undefined && next.rear === undefined;
    // A dial that was not moved reads 0: its fellow's figure stands for the station.
    const whole =
      field === 'toeIn' || empty ? next : { ...next, front: next.front ?? 0, rear: next.rear ?? 0 };
    this.#keep({ stations: empty ? others : [...others, whole] });
  }

  #freeId(side: Side, heave: number): string {
    return `${side} ${Math.round(heave * 1000) / 1000}`;
  }

  clearStations(): void {
    this.#more = [];
    this.#keep({ stations: [] });
  }

  plate(turn: Side): PlateReading | undefined {
    return this.readings.plates.find((plate) => plate.turn === turn);
  }

  /** Sets what both wheels read at a lock, degrees; undefined clears the lock. */
  setPlate(turn: Side, angles: { readonly left: number; readonly right: number } | undefined): void {
    const others = this.readings.plates.filter((plate) => plate.turn !== turn);
    this.#keep({ plates: angles ? [...others, { id: `${turn} lock`, turn, ...angles }] : others });
  }
}

// The finished car against its layout: readings of a bump-steer gauge and of turning plates, and what would explain them.
export {
  type ComparedReading,
  chiSquaredLimit,
  compareGauge,
  type GaugeComparison,
  type GaugeFailure,
} from './compare.ts';
export {
  APART_FROM,
  BUILT_DOUBT,
  type Explanation,
  explainReadings,
  type GaugeExplanation,
  type TellingMeasure,
} from './explain.ts';
export {
  type Gauge,
  type GaugeReadings,
  type GaugeStation,
  gaugeSchema,
  type PlateReading,
  readGaugeReadings,
  type SteerReading,
  steerReading,
  USUAL_GAUGE_DOUBT,
} from './readings.ts';
export { forecastStations, gaugeStations, type StationForecast } from './stations.ts';

// A car moved about by hand, and what it then does in plain words: what a page that moves and a film share.
export { type BumpFigure, bothWheels, oneWheel, roundBump } from './bump-figures.ts';
export { type CurvePlot, curvePlot, type PlotLine, steerRange } from './curve-plot.ts';
export { type HandPose, MovedCar, RIDE_HEIGHT, type SteerCurve, type WheelsPointing } from './moved-car.ts';
export {
  atTyreWords,
  bumpWords,
  byThemselves,
  doingWords,
  rollWords,
  seenWords,
  standingWords,
  steeringWords,
  steerWords,
} from './moving-words.ts';
export { type CarData, carriedLayout, type PageData } from './page-data.ts';
export { doingLines, doingOf, type Shown, type ShownCar, shownCars } from './showing.ts';

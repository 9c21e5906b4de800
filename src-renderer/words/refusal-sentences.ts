import { type Hardpoint, type Refusal, refusalLine } from '../../shared-math/layout/index.ts';

/** What the fields of the document are called on the screen. */
const FIELDS: Record<string, string> = {
  name: 'The name',
  'car.wheelbase': 'Wheelbase',
  'car.tyreRadius': 'Tyre radius',
  'car.tyreWidth': 'Tyre width',
  'car.handwheelRadius': 'Handwheel radius',
  'car.frontAxleLoad': 'Load on the front axle',
  'car.noseAhead': 'Nose ahead of the axle',
  'car.noseWidth': 'Width of the nose',
  'axle.left.camber': 'Camber',
  'axle.right.camber': 'Camber, right wheel',
  'axle.left.toeIn': 'Toe-in',
  'axle.right.toeIn': 'Toe-in, right wheel',
  'steering.stopAngle': 'Stops',
  'steering.box.ratio': 'Box ratio',
  'steering.box.sectorTravel': 'Sector travel',
  'steering.box.sectorAxis': 'The sector shaft',
  'travel.bump': 'Bump',
  'travel.rebound': 'Droop',
  'travel.roll': 'Roll',
};

/** Words of the document that stand inside reasons. */
const INSIDE: readonly [code: RegExp, words: string][] = [
  [/\bkingpinBottom\b/g, "the kingpin's bottom"],
  [/\bfixedEye\b/g, 'the fixed eye'],
  [/\bshackleEye\b/g, 'the shackle eye'],
];

/** A refusal of an edit as a sentence about the thing on the board, without its full stop. */
export function refusalSentence(refusal: Refusal, points: readonly Hardpoint[]): string {
  const place = refusal.path.replace(/\[\d\]$/, '');
  const stud = place.startsWith('studs.') ? place.slice('studs.'.length) : undefined;
  const ball = points.find((point) => point.id === (stud ?? place))?.name;
  const name = ball && stud ? `Stud of ${ball.toLowerCase()}` : (ball ?? FIELDS[place]);
  if (!name) return refusalLine(refusal);
  const reason = INSIDE.reduce((text, [code, words]) => text.replaceAll(code, words), refusal.reason);
  return `${name}: ${reason}`;
}

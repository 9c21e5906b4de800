import {
  bodyAt,
  bodyName,
  type Hardpoint,
  type LayoutDocument,
  type Refusal,
  refusalLine,
} from '../../shared-math/layout/index.ts';
import { formatLength, formatLoad, type LengthStyle } from '../../shared-math/units/index.ts';

/** What the fields of the document are called on the screen. */
const FIELDS: Record<string, string> = {
  name: 'The name',
  'car.wheelbase': 'Wheelbase',
  'car.driverSide': 'Driver sits',
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
  'steering.box.inputAngle': 'Input to sector shaft',
  'steering.box.sectorAxis': 'The sector shaft',
  'shaft.column.axis': 'The column’s axis',
  'shaft.box.axis': 'The axis of the box’s input',
  'ride.sprungMass': 'What the springs carry',
  'ride.unsprungMass': 'Axle, wheels, brakes',
  'ride.spring.rate': 'Spring rate',
  'ride.spring.load': 'Load put over the axle',
  'ride.spring.settles': 'How far the load drops the car',
  'ride.spring.leaves': 'Leaves',
  'ride.spring.fullLeaves': 'Leaves of full length',
  'ride.spring.thickness': 'Thickness of a leaf',
  'ride.spring.width': 'Width of a leaf',
  'ride.spring.length': 'Length between the eyes',
  'ride.damper.bump': 'Damper, bump',
  'ride.damper.rebound': 'Damper, rebound',
  'ride.springBase': 'Between the springs',
  'ride.damperBase': 'Between the dampers',
  'ride.tyreRate': 'Tyre rate',
  'ride.rollStiffness': 'Roll stiffness',
  'ride.sprungHeight': 'Middle of what the springs carry',
  'travel.bump': 'Bump',
  'travel.rebound': 'Droop',
  'travel.roll': 'Roll',
};

/** Words of the document that stand inside reasons. */
const INSIDE: readonly [code: RegExp, words: string][] = [
  [/\bkingpinBottom\b/g, "the kingpin's bottom"],
  [/\bfixedEye\b/g, 'the fixed eye'],
  [/\bshackleEye\b/g, 'the shackle eye'],
  [/\bspot as from\b/g, 'spot as the first end'],
  [/\bthe (cylinder|capsule) has\b/g, 'the tube has'],
];

/** What the sizes and places of rails and obstacles are called. */
const BODY_FIELDS: readonly [path: RegExp, words: string][] = [
  [/^size\[0\]/, 'length'],
  [/^size\[1\]/, 'width'],
  [/^size\[2\]/, 'height'],
  [/^radius/, 'diameter'],
  [/^turn/, 'turn'],
  [/^from/, 'one end'],
  [/^to/, 'other end'],
  [/^centre/, 'middle'],
  [/^name/, 'name'],
  [/^width/, 'width of section'],
  [/^height/, 'height of section'],
];

/** What a place in the lists of rails and obstacles is called: "Engine, width". */
function bodyPlace(path: string, document: LayoutDocument): string | undefined {
  const match = /^(rails|obstacles)\[(\d+)\]\.?(.*)$/.exec(path);
  const body = match && bodyAt(document, `${match[1]}.${match[2]}`);
  if (!body) return undefined;
  const rest = match[3] ?? '';
  const point = /^path\[(\d+)\]/.exec(rest);
  const field = point
    ? `point ${Number(point[1]) + 1}`
    : BODY_FIELDS.find(([pattern]) => pattern.test(rest))?.[1];
  const name = bodyName(body).trim() || 'What is in the way';
  return field ? `${name}, ${field}` : name;
}

/** Fields of the document whose value is a length, mm, beside hardpoints and bodies. */
const LENGTHS =
  /^car\.(wheelbase|tyreRadius|tyreWidth|handwheelRadius|noseAhead|noseWidth)$|^travel\.(bump|rebound)$|^lateral\.height$|^ride\.(spring\.(settles|thickness|width|length)|springBase|damperBase|sprungHeight)$/;

/** A bound and what was found, which the document has in its own units, as the reader reads and types them. */
function measured(reason: string, place: string, isPlace: boolean, style: LengthStyle): string {
  const isAngle = /turn$/.test(place);
  const words =
    place === 'car.frontAxleLoad' || place === 'ride.spring.load'
      ? (value: number) => formatLoad(value, style.unit)
      : (isPlace && !isAngle) || LENGTHS.test(place)
        ? (value: number) => formatLength(value, style)
        : undefined;
  if (!words) return reason;
  return reason.replaceAll(
    /\b(at least|at most|more than|found) (-?\d+(?:\.\d+)?)(?![\d.])/g,
    (_, bound: string, value: string) => `${bound} ${words(Number(value))}`,
  );
}

/** A refusal of an edit as a sentence about the thing on the board, without its full stop. */
export function refusalSentence(
  refusal: Refusal,
  points: readonly Hardpoint[],
  document?: LayoutDocument,
  style?: LengthStyle,
): string {
  // Numbers that stand in a list are joined by points in the names of hardpoints.
  const place = refusal.path.replace(/\[\d\]$/, '').replaceAll(/\[(\d+)\]/g, '.$1');
  const stud = place.startsWith('studs.') ? place.slice('studs.'.length) : undefined;
  const ball = points.find((point) => point.id === (stud ?? place))?.name;
  const body = document && bodyPlace(refusal.path, document);
  const name = ball && stud ? `Stud of ${ball.toLowerCase()}` : (ball ?? FIELDS[place] ?? body);
  if (!name) return refusalLine(refusal);
  const inUnit = style ? measured(refusal.reason, place, !!ball || !!body, style) : refusal.reason;
  const reason = INSIDE.reduce(
    (text, [code, words]) => text.replaceAll(code, words),
    inUnit.replaceAll(/\bjoints\[(\d+)\]/g, (_, index: string) => `joint ${Number(index) + 1}`),
  );
  return `${name}: ${reason}`;
}

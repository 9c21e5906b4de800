import type { SurveyRow } from '../../shared-math/adjust/index.ts';
import { surveyList } from '../../shared-math/adjust/list/index.ts';
import { type LayoutDocument, PLAIN_LAYOUT, withValue } from '../../shared-math/layout/index.ts';
import { plainValue } from './survey-peer.ts';
import { pointsOf } from './surveys.ts';

/** The car on the stands: of the plain car's kind, every point of it elsewhere. */
export const CAR: LayoutDocument = (
  [
    ['axle.left.kingpinTop', [-10, 612, 392]],
    ['axle.left.kingpinBottom', [6, 634, 272]],
    ['axle.left.wheelCentre', [0, 716, 336]],
    ['axle.left.tieRodBall', [-142, 588, 280]],
    ['location.left.framePivot', [-868, 372, 342]],
    ['steering.dragLinkBall', [-8, 520, 372]],
    ['steering.box.sectorCentre', [-842, 440, 508]],
    ['steering.box.pitmanBall', [-848, 470, 352]],
  ] as const
).reduce<LayoutDocument>((document, [id, at]) => withValue(document, id, at), PLAIN_LAYOUT);

/** What a tape says of it, as a shop writes it: inches to the sixteenth. */
export function taped(id: string): string {
  const row = surveyList(CAR).find((each) => each.id === id);
  if (!row?.observes) throw new Error(`no row ${id}`);
  const points = pointsOf(CAR);
  const value = plainValue({ ...row.observes, id, value: 1 } as SurveyRow, points, points);
  if (row.ways[0]?.unit === 'angle' && row.id !== 'pitman-lean') return value.toFixed(1);
  const sixteenths = Math.round((Math.abs(value) / 25.4) * 16);
  const [whole, over] = [Math.floor(sixteenths / 16), sixteenths % 16];
  const fraction = [16, 8, 4, 2]
    .map((parts) => [(over * parts) / 16, parts])
    .findLast(([top = 0.5]) => top % 1 === 0);
  return `${value < 0 ? '-' : ''}${whole}${over > 0 && fraction ? ` ${fraction.join('/')}` : ''}`;
}

/** The twenty measurements that every shop takes, in the order of the tape, each with the key that leads on from it. */
export const TWENTY: readonly (readonly [id: string, key: 'Enter' | 'PageDown'])[] = [
  ['hub-height', 'Enter'],
  ['track', 'Enter'],
  ['kingpins-top', 'Enter'],
  ['kingpins-bottom', 'Enter'],
  ['kingpin-top-up', 'Enter'],
  ['kingpin-bottom-up', 'Enter'],
  ['caster', 'Enter'],
  ['inclination', 'PageDown'],
  ['rail-outer', 'Enter'],
  ['rail-top', 'Enter'],
  ['pivot-back', 'Enter'],
  ['pivot-out', 'Enter'],
  ['pivot-up', 'PageDown'],
  ['box-back', 'Enter'],
  ['box-out', 'Enter'],
  ['box-up', 'Enter'],
  ['pitman-arm', 'PageDown'],
  ['drag-link', 'Enter'],
  ['steering-arm', 'PageDown'],
  ['tie-rod', 'Enter'],
];

import { capitalised } from '../capitalised.ts';
import { type Finding, type LimitName, speech } from '../findings/index.ts';
import type { Layout, ShaftDocument } from '../layout/index.ts';
import { stubSentence } from '../shaft/index.ts';
import { formatSpan, toDegrees, toRadians } from '../units/index.ts';
import type { BoxKind } from './boxes.ts';
import { type Car, limitOf } from './car.ts';
import type { Idea } from './idea.ts';
import type { Judged } from './judge.ts';
import { isLaid } from './laid-parts.ts';
import { mountLacks, planTurnOf } from './mounts.ts';
import type { NearestLimit, ProposalFigures } from './proposal.ts';
import { passesRail } from './rail-faces.ts';
import { BoxPlaces, crossmemberGap, HARDLY, hangsLow, sectorOut, tooLow } from './room.ts';
import { endsLeftOpen } from './shaft-ends.ts';
import type { ShaftFor } from './shaft-for.ts';
import { PLATE, SECTOR } from './sizes.ts';
import { armWords } from './usual-arms.ts';

/** "outside the left rail": ideas are laid on a car with its driver on the left. */
export function whereWords(car: Car, { where }: Pick<Idea, 'where'>): string {
  return where.replaceAll('RAIL', `${car.driver} rail`);
}

/** What becomes of a rail that a sector shaft passes. */
const AT_RAIL = {
  over: ['its sector shaft over it', undefined],
  under: ['its sector shaft under it', undefined],
  through: ['its sector shaft through it', 'The rail has to be bored and sleeved for the sector shaft.'],
  'upper edge': [
    'its sector shaft through its upper edge',
    'The rail’s upper edge has to be cut out for the sector shaft, and the rail stiffened there.',
  ],
  'lower edge': [
    'its sector shaft through its lower edge',
    'The rail’s lower edge has to be cut out for the sector shaft, and the rail stiffened there.',
  ],
} as const;

/** The same of a laid box: how its sector shaft passes the rail where it does. */
function laidWhereWords(car: Car, idea: Idea, layout: Layout): string {
  const where = whereWords(car, idea);
  return idea.mount === 'through' ? where.replace('its arm outside', AT_RAIL[passesRail(layout)][0]) : where;
}

/** Which way the arm points, as far as the idea says: ", arm up"; empty of a box that stands. */
function armWayWords({ way, mount, arm }: Idea): string {
  if (mount === 'held') return '';
  if (way === 'side') return `, arm ${arm}`;
  return arm === 'up' ? ', arm over the box' : '';
}

/** "Side steer, box outside the left rail, arm down, behind the axle, manual". */
export function ideaWords(car: Car, idea: Idea): string {
  const assist = idea.assist === 'power' ? 'assisted' : 'manual';
  return `${idea.way === 'side' ? 'Side' : 'Cross'} steer, box ${whereWords(car, idea)}${armWayWords(idea)}, ${
    idea.ahead ? 'ahead of' : 'behind'
  } the axle, ${assist}`;
}

/** Why a box does not stand where its idea has it, as a sentence; empty if it does. */
export function placeWords(car: Car, idea: Idea, layout: Layout): string {
  const speak = speech(car.style, car.limits);
  const off = mountLacks(idea, layout);
  if (off > HARDLY && idea.mount === 'crossmember' && crossmemberGap(layout) <= PLATE.most)
    return `The steering box is nearer to the rail than to its place ${whereWords(car, idea)}.`;
  if (off > HARDLY)
    return `The steering box is ${speak.length(off, [0])} out of reach of its place ${whereWords(car, idea)}.`;
  const low = tooLow(layout);
  if (low > HARDLY)
    return `The steering box is ${speak.length(low, [0])} too low over the road: at full bump less than 2 in is left under it.`;
  const far = sectorOut(layout);
  return far > SECTOR.most + HARDLY
    ? `The sector shaft would have to reach ${speak.length(far, [SECTOR.most])} out of the box to its arm, at the most ${speak.setLength(SECTOR.most)}.`
    : '';
}

/** "Side steer outside the left rail, arm down, behind the axle, manual 16 to 1". */
export function proposalName(car: Car, idea: Idea, layout: Layout): string {
  const { box } = layout.steering;
  const arm =
    idea.way === 'side'
      ? box.sectorCentre[2] > box.pitmanBall[2]
        ? 'arm down'
        : 'arm up'
      : box.sectorCentre[0] < box.pitmanBall[0]
        ? 'arm ahead'
        : 'arm back';
  const over = idea.way === 'cross' && idea.arm === 'up' ? ' over the box' : '';
  const where = idea.key.includes(' held ')
    ? 'with the box where it stands'
    : laidWhereWords(car, idea, layout);
  return `${idea.way === 'side' ? 'Side' : 'Cross'} steer ${where}, ${arm}${over}, ${
    idea.ahead ? 'ahead of' : 'behind'
  } the axle, ${box.assist === 'power' ? 'assisted' : 'manual'} ${Number(box.ratio.toFixed(1))} to 1`;
}

/** What a finding is about that no steering mends: they are the car's own, whatever is proposed. */
const OF_THE_CAR =
  /^(caster|toe-static|bind-in-roll|beam-twist|tyre-and-ground|tape|sights|plausible|link-strength|link-thread|driver-side)/;

const isOfTheCar = ({ rule }: Finding): boolean => OF_THE_CAR.test(rule);

/** Findings on what was laid that want a look: limits passed without a stop. */
export function pastLimits({ held }: Car, findings: readonly Finding[]): Finding[] {
  const laid = isLaid(held);
  return findings.filter(
    (finding) =>
      finding.severity === 'attention' &&
      !isOfTheCar(finding) &&
      (!finding.between || finding.between.parts.some(laid)),
  );
}

/** Shares of the limits that a proposal's figures use up, the fullest first. */
export function limitShares(
  car: Car,
  figures: ProposalFigures,
  joints: ShaftDocument['joints'],
): NearestLimit[] {
  const speak = speech(car.style, car.limits);
  const limit = (name: LimitName) => limitOf(car, name);
  const angle = (degrees: number, decimals = 2) => speak.angle(toRadians(degrees), decimals);
  const atMost = (
    words: string,
    value: number | undefined,
    name: LimitName,
    text: (value: number) => string,
  ) =>
    value === undefined
      ? []
      : [{ sentence: `${words} ${text(value)}, limit ${text(limit(name))}`, share: value / limit(name) }];
  const atLeast = (words: string, value: number, name: LimitName, text: (value: number) => string) => [
    { sentence: `${words} ${text(value)}, at least ${text(limit(name))}`, share: limit(name) / value },
  ];
  const ratio = (value: number) => `${speak.number(value, 1)} to 1`;
  const { nearest } = figures;
  const bent = figures.shaftJoints.flatMap((joint, i) => {
    const isDouble = joints[i]?.kind === 'double';
    return atMost(
      `${isDouble ? 'Double joint' : 'Joint'} ${i + 1} of the steering shaft bends`,
      joint,
      isDouble ? 'jointDouble' : 'jointSingle',
      (value) => angle(value, 1),
    );
  });
  const shares = [
    ...bent,
    ...atMost('Bump steer', figures.bumpSteer, 'bumpSteerWorst', angle),
    ...atMost('Bump steer with one wheel over a bump', figures.oneWheel, 'bumpSteerWorst', angle),
    ...atMost('Steer by itself in a hard stop', figures.brakeSteer, 'brakeSteer', angle),
    ...atMost('Balls tilt', figures.ballTilt, 'ballTilt', (value) => angle(value, 1)),
    ...atMost('Overall ratio', figures.overallRatio, 'ratioMost', ratio),
    ...atLeast('Overall ratio', figures.overallRatio, 'ratioLeast', ratio),
    ...atLeast('Inner wheel at lock', figures.innerLock, 'lockLeast', (value) => angle(value, 1)),
    ...atLeast(
      'Drag link to its arms',
      Math.min(figures.pitmanTransmission, figures.armTransmission),
      'transmissionLeast',
      (value) => angle(value, 0),
    ),
    ...(nearest && nearest.distance > 0
      ? [
          {
            sentence: `${capitalised(nearest.words)} ${speak.length(nearest.distance, [nearest.limit])}, at least ${speak.setLength(nearest.limit)}`,
            share: nearest.limit / nearest.distance,
          },
        ]
      : []),
  ];
  return shares.sort((a, b) => b.share - a.share);
}

/** Why a proposal is good, in plain sentences. */
export function goodWords(
  car: Car,
  idea: Idea,
  layout: Layout,
  { figures }: Judged,
  shaft: ShaftFor,
): string[] {
  if (!figures) return [];
  const speak = speech(car.style, car.limits);
  const good: string[] = [];
  const worst = Math.max(figures.bumpSteer, figures.oneWheel ?? figures.bumpSteer);
  const limit = limitOf(car, 'bumpSteerWorst');
  if (worst < limit)
    good.push(
      `Bump steer ${speak.angle(toRadians(worst), 2, [toRadians(limit)])} at the worst, each wheel anywhere in its travel.`,
    );
  // What an assisted one takes where its assistance fails is among its costs.
  if (idea.assist === 'manual' && figures.rimForceMost <= limitOf(car, 'rimForce'))
    good.push(`Parking takes ${speak.force(figures.rimForceMost)} at the rim at the most.`);
  good.push(`Turns in ${formatSpan(figures.circle, car.style.unit)} between kerbs.`);
  if (idea.way === 'side' && idea.where.startsWith('outside'))
    good.push('The drag link lies outside, along the rail, in plain sight and out of the engine’s way.');
  good.push(...armWords(car, idea, layout).good);
  if (idea.way === 'cross' && idea.movesAxle)
    good.push(
      'A lateral bar as long as the drag link, laid beside it, moves the axle across as the link does.',
    );
  // An end made longer in a bearing is among the costs, and no merit of the few joints that it makes do.
  const longer = shaft.kind === 'laid' ? endsLeftOpen(shaft.shaft).stubs : [];
  if (
    figures.shaftJoints.length > 0 &&
    figures.shaftJoints.length < 3 &&
    !longer.some(({ bearing }) => bearing)
  )
    good.push(
      `The steering shaft gets there with ${figures.shaftJoints.length === 1 ? 'one joint' : 'two joints'}${figures.supports === 0 ? ' and no support bearing' : ''}.`,
    );
  return good;
}

/** Degrees in plan that a box may stand off square without its bracket being a matter of words. */
const HARDLY_TURNED = 1;

/** mm that a plate and a usual bracket bridge; common practice, no published source. */
const USUAL_BRACKET = 25.4;

/** "Frame rail" as it stands within a sentence; "V8 block" as it is. */
const inSentence = (name: string) =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

/** Which joints of a laid shaft are double ones, by their places. */
const doubleJoints = (shaft: ShaftFor): number[] =>
  shaft.kind === 'laid' ? shaft.shaft.joints.flatMap(({ kind }, i) => (kind === 'double' ? [i] : [])) : [];

/** What a proposal costs: limits that are passed, and what is uncommon or has to be bought. */
export function costWords(
  car: Car,
  idea: Idea,
  layout: Layout,
  { findings, figures }: Judged,
  kind: BoxKind | undefined,
  shaft: ShaftFor,
): string[] {
  const speak = speech(car.style, car.limits);
  const costs = pastLimits(car, findings).map(
    ({ sentence, limit }) => `${sentence}${limit ? ` (${limit})` : ''}.`,
  );
  if (figures && idea.assist === 'power')
    costs.push(
      `If the assistance fails, parking takes ${speak.force(figures.rimForceMost)} at the rim at the most.`,
    );
  const atRail = idea.mount === 'through' ? AT_RAIL[passesRail(layout)][1] : undefined;
  if (atRail) costs.push(atRail);
  const reach = sectorOut(layout);
  if (reach > SECTOR.usual)
    costs.push(
      `The sector shaft has to reach ${speak.length(reach)} out of the box to its arm: a long one, or one made longer with a bearing beside the arm.`,
    );
  const turned = idea.turn === undefined ? 0 : toDegrees(Math.abs(planTurnOf(layout)));
  if (turned > HARDLY_TURNED)
    costs.push(
      `The box stands turned ${speak.number(turned, 0)}° in plan${car.rooms['box-turn'] ? '' : ', so that its input leaves toward the column'}: its plate or bracket has to be made to that angle.`,
    );
  const bridged = new BoxPlaces(layout).bridged(layout, idea.mount === 'crossmember' ? 'crossmember' : 'any');
  if (bridged && bridged.by > USUAL_BRACKET)
    costs.push(
      `A bracket has to bridge ${speak.length(bridged.by)} from the ${inSentence(bridged.from)} to the box.`,
    );
  if (idea.way === 'cross' && idea.arm === 'up')
    costs.push(
      'The box lies upside down, its arm on top: its maker has to say whether seals, filler and vent allow that.',
    );
  const low = hangsLow(layout);
  if (low)
    costs.push(
      `The box hangs ${speak.length(low.below)} below the rail, ${speak.length(low.road)} over the road at ride height: it is the first thing there to touch, and wants a guard.`,
    );
  if (idea.mount === 'top') costs.push('The rail wants a plate on top, boxed or sleeved under the bolts.');
  if (idea.assumes !== undefined) costs.push(idea.assumes);
  costs.push(...armWords(car, idea, layout).costs);
  if (idea.way === 'cross' && idea.movesAxle)
    costs.push(
      car.layout.lateral.kind === 'bar'
        ? 'The lateral bar is laid anew beside the drag link: its length changes, and so do its brackets on axle and frame.'
        : 'A lateral bar has to be made, with a bracket on the axle and one on the frame.',
    );
  const doubles = doubleJoints(shaft);
  if (figures && figures.shaftJoints.length > 2)
    costs.push(
      `The steering shaft takes ${figures.shaftJoints.length} joints${doubles.length > 0 ? ', one of them double' : ''}${figures.supports > 0 ? ` and ${figures.supports === 1 ? 'a support bearing' : `${figures.supports} support bearings`}` : ''}.`,
    );
  for (const i of figures ? doubles : [])
    costs.push(
      `Joint ${i + 1} of the steering shaft is a double one, bent ${speak.number(figures?.shaftJoints[i] ?? 0, 0)}°: dearer than a single one, and longer.`,
    );
  if (shaft.kind === 'no-column')
    costs.push('No column is drawn: how the steering shaft gets there is left open.');
  const open = shaft.kind === 'laid' ? endsLeftOpen(shaft.shaft) : undefined;
  costs.push(...(open?.stubs ?? []).map((stub) => stubSentence(stub, (mm) => speak.length(mm))));
  if (open?.notGiven.includes('column'))
    costs.push('The column’s end is not given: which joint goes onto it is left open.');
  const inputOpen = open?.notGiven.includes('box');
  if (shaft.kind === 'held' && !car.held.has('box-kind') && !shaft.shaft.box.fit)
    costs.push(
      'What the box’s input ends in is not given: whether it goes into the shaft that stands has to be seen.',
    );
  if (kind && !kind.shelved)
    costs.push(
      `The box is a usual one, not on the shelf${inputOpen ? ': what its input ends in is not given, so the joint that goes onto it is left open' : ''}.`,
    );
  else if (inputOpen)
    costs.push('What the box’s input ends in is not given: which joint goes onto it is left open.');
  if (car.layout.rails.length === 0)
    costs.push('No rail is drawn: what the box is bolted to, and where, is assumed.');
  return costs;
}

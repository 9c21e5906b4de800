import { capitalised } from '../../capitalised.ts';
import type { Point } from '../../geometry/points.ts';
import { LATERAL_FACTS, type LayoutDocument, type Side } from '../../layout/index.ts';
import { surveyedPoints } from '../survey.ts';
import { footOn, length, longestView, onFloor } from './dimensions.ts';
import { addLateral } from './lateral-rows.ts';
import type { EntryWay, Instrument, ListRow, ListView } from './list-row.ts';
import { type Add, addLean, addRails } from './rail-and-arm.ts';
import { BY_TYRE_HEIGHT, DOWN_FROM_RAIL, FROM_RAIL, PITMAN_ARM, plainWay } from './ways.ts';

export interface ListOptions {
  /** True to list the right side as well where the document mirrors it, so that the two can be held against each other. */
  readonly bothSides?: boolean;
}

const HEIGHT = plainWay('up from the floor');
const OUT = plainWay('out from the centre line');
const BACK = plainWay("back from the hubs' line");
const LENGTH = plainWay('centre to centre');

/**
 * What a person measures of a document's car, in the order of the tape: wheels, kingpins, rails, what locates the axle,
 * box, arms and links. Filled once it leaves no coordinate of axle, location, lateral and steering free but the wheel
 * centres' x, which stands still.
 * Frame:   vehicle, ISO 8855, at ride height: tyres on the ground, wheels straight ahead. mm.
 * Checked: tests/unit/adjust/list.test.ts (the combinations of kinds and both ways of steering, by `adjust`).
 */
export function surveyList(document: LayoutDocument, { bothSides = false }: ListOptions = {}): ListRow[] {
  const points = new Map(surveyedPoints(document).map((entry) => [entry.id, entry]));
  const at = (id: string) => (points.get(id) as { at: Point }).at;
  const rows: ListRow[] = [];

  const mirrored = { axle: isMirrored(document.axle), location: isMirrored(document.location) };
  const sidesOf = (part: 'axle' | 'location'): readonly Side[] =>
    mirrored[part] && !bothSides ? ['left'] : ['left', 'right'];
  /** On which sides a part is measured, with what goes before its name and behind its rows' ids there. */
  const eachSide = (part: 'axle' | 'location') =>
    sidesOf(part).map((side) => ({
      side,
      named: (name: string) =>
        sidesOf(part).length === 1 ? capitalised(name) : `${capitalised(side)} ${name}`,
      suffix: behind(side),
    }));

  let group = '';
  const add: Add = (id, name, how, instrument, observes, dimension, view, ways, side) =>
    rows.push({ id, group, name, how, instrument, observes, dimension, view, ways, side });

  const back = (id: string, name: string, noun: string, of: string, side?: Side) =>
    add(
      `${id}-back${behind(side)}`,
      `${name}, back from the hubs' line`,
      `Plumb the centre of ${noun} to the floor and measure back from the line between the two hubs, plumbed down too; ahead of that line write it with a minus.`,
      'plumb-bob',
      { kind: 'back', of },
      length([0, at(of)[1], at(of)[2]], at(of)),
      'side',
      [BACK],
      side,
    );
  const out = (
    id: string,
    name: string,
    noun: string,
    of: string,
    side?: Side,
    ways: readonly EntryWay[] = [OUT],
  ) =>
    add(
      `${id}-out${behind(side)}`,
      `${name}, out from the centre line`,
      `From the car's centre line out to the centre of ${noun}, square to that line; past the centre line, on the other side, write it with a minus.`,
      'tape',
      { kind: 'out', of },
      length([at(of)[0], 0, at(of)[2]], at(of)),
      'front',
      ways,
      side,
    );
  const up = (
    id: string,
    name: string,
    noun: string,
    of: string,
    side?: Side,
    ways: readonly EntryWay[] = [HEIGHT],
  ) =>
    add(
      `${id}-up${behind(side)}`,
      `${name}, up from the floor`,
      `From the floor straight up to the centre of ${noun}.`,
      'tape',
      { kind: 'up', of },
      length([at(of)[0], at(of)[1], 0], at(of)),
      'side',
      ways,
      side,
    );
  const place = (
    id: string,
    name: string,
    noun: string,
    of: string,
    { side, onFrame = false }: { side?: Side; onFrame?: boolean } = {},
  ) => {
    back(id, name, noun, of, side);
    out(id, name, noun, of, side, onFrame ? [OUT, FROM_RAIL] : [OUT]);
    up(id, name, noun, of, side, onFrame ? [HEIGHT, DOWN_FROM_RAIL] : [HEIGHT]);
  };
  const straight = (
    id: string,
    name: string,
    how: string,
    from: string,
    to: string,
    side?: Side,
    instrument: Instrument = 'tape',
  ) =>
    add(
      id,
      name,
      how,
      instrument,
      { kind: 'straight', from, to },
      length(at(from), at(to)),
      longestView(at(from), at(to)),
      [LENGTH],
      side,
    );
  const arm = (id: string, name: string, how: string, of: string, side: Side) =>
    add(
      id,
      name,
      how,
      'tape',
      { kind: 'arm', of, side },
      length(footOn(at(`axle.${side}.kingpinBottom`), at(`axle.${side}.kingpinTop`), at(of)), at(of)),
      'top',
      [plainWay('ball to kingpin axis')],
      side,
    );

  group = 'Wheels';
  for (const { side, named, suffix } of eachSide('axle'))
    add(
      `hub-height${suffix}`,
      `${named('hub')}, up from the floor`,
      "From the floor up to the hub's centre, the car's weight on its tyres.",
      'tape',
      { kind: 'up', of: `axle.${side}.wheelCentre` },
      length(onFloor(at(`axle.${side}.wheelCentre`)), at(`axle.${side}.wheelCentre`)),
      'front',
      [HEIGHT, BY_TYRE_HEIGHT],
      side,
    );
  straight(
    'track',
    'Track, tyre centre to tyre centre',
    "At the hubs' height, from the outer edge of one tread to the inner edge of the other: that is centre to centre.",
    'axle.left.wheelCentre',
    'axle.right.wheelCentre',
  );
  if (!mirrored.axle) out('wheel', 'Left tyre centre', 'the left tyre', 'axle.left.wheelCentre', 'left');

  group = 'Kingpins';
  straight(
    'kingpins-top',
    'Kingpin to kingpin, top of the bosses',
    "Across the car from kingpin centre to kingpin centre at the bosses' top.",
    'axle.left.kingpinTop',
    'axle.right.kingpinTop',
  );
  straight(
    'kingpins-bottom',
    'Kingpin to kingpin, bottom of the bosses',
    "Across the car from kingpin centre to kingpin centre at the bosses' bottom.",
    'axle.left.kingpinBottom',
    'axle.right.kingpinBottom',
  );
  if (!mirrored.axle) {
    out(
      'kingpin-top',
      'Left kingpin, top',
      "the left kingpin at the boss's top",
      'axle.left.kingpinTop',
      'left',
    );
    out(
      'kingpin-bottom',
      'Left kingpin, bottom',
      "the left kingpin at the boss's bottom",
      'axle.left.kingpinBottom',
      'left',
    );
  }
  for (const { side, named, suffix } of eachSide('axle')) {
    const top = `axle.${side}.kingpinTop`;
    const bottom = `axle.${side}.kingpinBottom`;
    const boss = (end: string, of: string) =>
      add(
        `kingpin-${end}-up${suffix}`,
        `${named('kingpin boss')}, ${end}, up from the floor`,
        `From the floor up to the ${end} of the kingpin's boss, at the kingpin's centre.`,
        'tape',
        { kind: 'up', of },
        length(onFloor(at(of)), at(of)),
        'front',
        [HEIGHT],
        side,
      );
    boss('top', top);
    boss('bottom', bottom);
    const lean = (id: string, name: string, how: string, kind: 'caster' | 'inclination', view: ListView) =>
      add(
        `${id}${suffix}`,
        named(name),
        how,
        'angle-finder',
        { kind, side },
        { kind: 'angle', at: at(bottom), along: at(top) },
        view,
        [plainWay('from plumb', 'angle')],
        side,
      );
    lean(
      'caster',
      'caster',
      "Angle finder on the kingpin or on the boss's machined face, seen from the side: the top leaning back counts as plus.",
      'caster',
      'side',
    );
    lean(
      'inclination',
      'kingpin inclination',
      "Angle finder on the kingpin, seen from ahead: the top leaning in toward the car's centre counts as plus.",
      'inclination',
      'front',
    );
    add(
      `kingpin-back${suffix}`,
      `${named('kingpin')}, bottom, back from the hubs' line`,
      'Plumb the centre of the kingpin at its lower end to the floor and measure back from the line between the hubs; ahead of it with a minus, right below it 0.',
      'plumb-bob',
      { kind: 'back', of: bottom },
      length([0, at(bottom)[1], at(bottom)[2]], at(bottom)),
      'side',
      [BACK],
      side,
    );
  }

  group = 'Rails';
  addRails(document, add, at('steering.box.sectorCentre'));

  addLocation();

  group = LATERAL_FACTS[document.lateral.kind].title;
  addLateral(document.lateral, place, straight);

  const sector = 'steering.box.sectorCentre';
  const pitman = 'steering.box.pitmanBall';
  group = 'Steering box';
  place('box', 'Sector shaft', 'the sector shaft, where the pitman arm sits on it', sector, {
    onFrame: true,
  });

  group = 'Pitman arm';
  const { sectorAxis } = document.steering.box;
  const along = at(sector).map((each, axis) => each + (sectorAxis[axis] as number)) as unknown as Point;
  const foot = footOn(at(sector), along, at(pitman));
  add(
    PITMAN_ARM,
    'Pitman arm, centre to centre',
    "From the sector shaft's centre to the ball's centre, square to the shaft: by caliper or tape along the arm, from hole to hole. How far the ball stands out along the shaft is no part of it.",
    'tape',
    { kind: 'sector-arm', of: pitman },
    length(foot, at(pitman)),
    longestView(foot, at(pitman)),
    [plainWay('centre to centre, square to the shaft')],
  );
  addLean(document, add, at);
  place('pitman', 'Pitman ball', "the pitman arm's ball", pitman);

  const ball = 'steering.dragLinkBall';
  const steered = document.steering.dragLinkTo;
  group = 'Drag link';
  straight(
    'drag-link',
    'Drag link, ball to ball',
    'From ball centre to ball centre along the drag link.',
    ball,
    pitman,
  );
  arm(
    'steering-arm',
    'Steering arm, ball to kingpin axis',
    "From the ball's centre to the kingpin's axis, square to the kingpin.",
    ball,
    steered,
  );
  place('arm-ball', 'Steering arm ball', "the drag link's ball on the steering arm", ball);

  group = 'Tie rod';
  straight(
    'tie-rod',
    'Tie rod, ball to ball',
    'From ball centre to ball centre along the tie rod.',
    'axle.left.tieRodBall',
    'axle.right.tieRodBall',
  );
  for (const { side, named, suffix } of eachSide('axle')) {
    const tie = `axle.${side}.tieRodBall`;
    const name = named('tie rod ball');
    arm(
      `tie-arm${suffix}`,
      `${named('tie rod arm')}, ball to kingpin axis`,
      "From the ball's centre to the kingpin's axis, square to the kingpin.",
      tie,
      side,
    );
    place('tie-ball', name, `the tie rod's ball${sideWord(side, sidesOf('axle'))}`, tie, { side });
  }
  return rows;

  function addLocation() {
    const { kind } = document.location;
    if (kind === 'wishbone') {
      group = 'Wishbone';
      place('pivot', 'Wishbone pivot', "the wishbone's ball on the frame", 'location.framePivot');
      toKingpin('pivot-kingpin', 'Wishbone pivot to left kingpin, bottom', 'location.framePivot', 'left');
      return;
    }
    // A length that no other row tells: with it a figure on the wrong side of the axle does not fit.
    function toKingpin(id: string, name: string, pivot: string, side: Side) {
      straight(
        id,
        name,
        "Straight from the pivot's centre to the lower end of the kingpin.",
        pivot,
        `axle.${side}.kingpinBottom`,
        side,
      );
    }
    const each = eachSide('location');
    const across = (id: string, name: string, of: string) =>
      straight(
        id,
        name,
        'Straight across the car from centre to centre.',
        `location.left.${of}`,
        `location.right.${of}`,
      );
    if (kind === 'hairpins' || kind === 'split-rods') {
      const hairpin = kind === 'hairpins';
      group = hairpin ? 'Hairpins' : 'Radius rods';
      const rod = hairpin ? 'hairpin pivot' : 'radius rod ball';
      for (const { side, named } of each)
        place(
          'pivot',
          named(rod),
          `the ${hairpin ? "hairpin's bolt" : "radius rod's ball"} on the frame${sideWord(side, sidesOf('location'))}`,
          `location.${side}.framePivot`,
          { side, onFrame: true },
        );
      for (const { side, named, suffix } of each)
        toKingpin(
          `pivot-kingpin${suffix}`,
          named(`${rod} to kingpin, bottom`),
          `location.${side}.framePivot`,
          side,
        );
      across('pivots-apart', hairpin ? 'Hairpin pivots, apart' : 'Radius rod balls, apart', 'framePivot');
      return;
    }
    if (kind === 'four-bar') {
      group = 'Four bars';
      for (const { side, named, suffix } of each)
        for (const bar of ['upper', 'lower'] as const) {
          const path = `location.${side}.${bar}`;
          const where = sideWord(side, sidesOf('location'));
          place(
            `${bar}-axle`,
            named(`${bar} bar, axle end`),
            `the ${bar} bar's bolt on the axle${where}`,
            `${path}.axle`,
            { side },
          );
          place(
            `${bar}-frame`,
            named(`${bar} bar, frame end`),
            `the ${bar} bar's bolt on the frame${where}`,
            `${path}.frame`,
            { side, onFrame: true },
          );
          straight(
            `${bar}-length${suffix}`,
            named(`${bar} bar, length`),
            'From bolt centre to bolt centre along the bar.',
            `${path}.axle`,
            `${path}.frame`,
            side,
          );
        }
      across('upper-apart', 'Upper bars, frame ends apart', 'upper.frame');
      return;
    }
    if (kind === 'quarter-elliptic') {
      group = 'Springs and radius rods';
      for (const { side, named, suffix } of each) {
        const where = sideWord(side, sidesOf('location'));
        const of = (name: string) => `location.${side}.${name}`;
        for (const [id, name, noun, at, onFrame] of QUARTER_POINTS)
          place(id, named(name), `${noun}${where}`, of(at), { side, onFrame });
        straight(
          `rod-length${suffix}`,
          named('radius rod, length'),
          'From bolt centre to bolt centre along the rod.',
          of('rod.axle'),
          of('rod.frame'),
          side,
        );
        straight(
          `spring-length${suffix}`,
          named('spring, clamp to eye, straight'),
          "Straight from where the main leaf leaves the clamp to the eye's centre.",
          of('clamp'),
          of('eye'),
          side,
        );
      }
      across('springs-apart', 'Springs, eyes apart', 'eye');
      return;
    }
    group = 'Leaf springs';
    for (const { side, named, suffix } of each) {
      const where = sideWord(side, sidesOf('location'));
      const of = (name: string) => `location.${side}.${name}`;
      place('fixed-eye', named('fixed eye'), `the spring's fixed eye${where}`, of('fixedEye'), {
        side,
        onFrame: true,
      });
      place('seat', named('spring seat'), `the spring's seat on the axle${where}`, of('seat'), {
        side,
      });
      place('shackle-eye', named('shackle eye'), `the spring's shackle eye${where}`, of('shackleEye'), {
        side,
      });
      straight(
        `eyes-apart${suffix}`,
        named('spring, eye to eye'),
        "Straight from one eye's centre to the other's.",
        of('fixedEye'),
        of('shackleEye'),
        side,
      );
    }
    across('springs-apart', 'Springs, seats apart', 'seat');
  }
}

const QUARTER_POINTS = [
  ['quarter-butt', 'spring, thick end', "the main leaf's end in the clamp", 'butt', true],
  ['quarter-clamp', 'spring, end of its clamp', 'the main leaf where it leaves the clamp', 'clamp', true],
  ['quarter-eye', 'spring, eye', "the spring's eye on the axle", 'eye', false],
  ['rod-axle', 'radius rod, axle end', "the radius rod's bolt on the axle", 'rod.axle', false],
  ['rod-frame', 'radius rod, frame end', "the radius rod's bolt on the frame", 'rod.frame', true],
] as const;

function isMirrored(part: LayoutDocument['axle'] | LayoutDocument['location']): boolean {
  return 'right' in part && part.right === 'mirror';
}

/** What stands behind a row's id on the right side. */
function behind(side: Side | undefined): string {
  return side === 'right' ? '-right' : '';
}

function sideWord(side: Side, sides: readonly Side[]): string {
  return sides.length === 1 ? '' : `, ${side} side`;
}

import { type LengthStyle, lengthBeside, toDegrees } from '../units/index.ts';
import { boxKinds } from './boxes.ts';
import { type Car, carOf, limitOf } from './car.ts';
import { HOLDS, type HoldName, heldAsMeasured, type ProposeQuestion, standsBy } from './question.ts';
import { hasRails, railStretch } from './rail-faces.ts';
import { givenRoom, givenRoomWords, isRoomName, type Rooms, roomFigures, roomIsOf } from './rooms.ts';
import { isWordedRoomName, ROOMS_IN_WORDS, wayWords, wordedRoomWords } from './rooms-in-words.ts';
import { alongRail } from './side-steer.ts';
import { ARM, LEAN, PLATE, TURNED } from './sizes.ts';

/** One of several things that something may be. */
export interface ProposeWay {
  readonly name: string;
  /** "on top of the rail". */
  readonly words: string;
  readonly open: boolean;
}

/** One thing that a proposal may choose, whether it is held, and how far it may go, for a person to read. */
export interface ProposeFreedom {
  readonly name: HoldName;
  /** "the steering box". */
  readonly words: string;
  readonly held: boolean;
  /** Held because it was measured on the car or is planned. */
  readonly measured: boolean;
  /** "4 1/2 in to 7 in long, up to 12° off square to the link". */
  readonly room: string;
  /** What of its room can be given in figures, and what is given; undefined where it has none. */
  readonly figures: { readonly of: string; readonly given: string } | undefined;
  /** What it may be, each in words, and whether that may be tried; undefined where it is a matter of figures. */
  readonly ways: readonly ProposeWay[] | undefined;
  /** By what else it is held, which it stands with; undefined where it is held itself, or free. */
  readonly with: string | undefined;
}

const WORDS: Readonly<Record<HoldName, string>> = {
  way: 'side or cross steer',
  box: 'where the steering box is bolted',
  mount: 'which part of the frame the box is on',
  'axle-side': 'behind or ahead of the axle',
  'arm-way': 'pitman arm down or up',
  'box-turn': 'how the box is turned',
  'box-kind': 'which steering box',
  'pitman-arm': 'the pitman ball',
  'steering-arm': 'the steering arm’s ball',
  'tie-rod': 'the tie rod’s balls',
  lateral: 'what holds the axle sideways',
  shaft: 'the steering shaft between column and box',
  stops: 'the axle’s stops',
};

/** What something that stands takes along, by its name. */
const WITH: Readonly<Partial<Record<HoldName, string>>> = {
  box: 'the steering box',
  shaft: 'the steering shaft',
  'steering-arm': 'the steering arm',
};

function roomOf(car: Car, name: HoldName): string {
  const size = (mm: number) => lengthBeside(mm, [0], car.style);
  const arms = `${size(ARM.least)} to ${size(ARM.most)}`;
  switch (name) {
    case 'way':
      return 'either';
    case 'box': {
      const behind = alongRail(car.layout, false);
      const ahead = alongRail(car.layout, true);
      const places = [
        ...(behind
          ? [`${size(Math.round(-behind[1]))} to ${size(Math.round(-behind[0]))} behind the axle`]
          : []),
        ...(ahead ? [`${size(Math.round(ahead[0]))} to ${size(Math.round(ahead[1]))} ahead of it`] : []),
      ];
      const rails = hasRails(car.layout) ? 'along the rails' : 'along rails that are assumed';
      return `${rails}, its arm’s ball ${places.join(', or ') || `between ${railStretch(car.layout).map(size).join(' and ')}`}; bolted to a rail or crossmember within ${size(PLATE.most)}`;
    }
    case 'mount':
      return `outside, inside or on top of the ${car.driver} rail, its sector shaft through the rail, or on a crossmember`;
    case 'axle-side':
      return 'either';
    case 'arm-way':
      return 'hanging down or standing up; in cross steer, under its box or over it';
    case 'box-turn':
      return `square across the car or turned up to ${Math.round(toDegrees(TURNED))}° toward the column, where toward the middle of the car is above 0; in cross steer, leaning back 3° to 31°`;
    case 'box-kind': {
      const kinds = (['side', 'cross'] as const).flatMap((way) =>
        (['manual', 'power'] as const).flatMap((assist) => boxKinds(way, assist, car.shelf, false)),
      );
      const shelved = kinds.filter((kind) => kind.shelved).length;
      return `${shelved} on the shelf, ${kinds.length - shelved} usual ones, manual and assisted`;
    }
    case 'pitman-arm':
      return `on an arm ${arms} long, up to ${Math.round(toDegrees(LEAN))}° off square to the link`;
    case 'steering-arm':
      return `on an arm ${size(ARM.least)} to ${size(ARM.most + 10)} long, from just below the kingpin to just above it`;
    case 'tie-rod':
      return 'on arms that aim at the middle of the rear axle, behind the front axle, or ahead of it where the wheel leaves room';
    case 'lateral':
      return 'for cross steer a bar beside the drag link, parallel to it and of its length; else as it is';
    case 'shaft':
      return 'one to three joints, with the support bearings that they ask for';
    case 'stops':
      return `so that the inner wheel turns ${limitOf(car, 'lockLeast')}° to ${limitOf(car, 'lockMost')}°`;
  }
}

/** How far something may go: as far as is usual, or as far as was given. */
function roomWords(car: Car, name: HoldName): string {
  if (isWordedRoomName(name)) {
    const ways = car.rooms[name];
    return ways ? wordedRoomWords(name, ways) : roomOf(car, name);
  }
  const room = car.rooms[name];
  return room ? givenRoomWords(name, room, car.style) : roomOf(car, name);
}

/** What a question lets proposals choose, and what it holds, with the room of each in words. */
export function proposeFreedoms(question: ProposeQuestion): ProposeFreedom[] {
  const car = carOf(question);
  const measured = heldAsMeasured(question.document);
  return HOLDS.map((name) => {
    const by = standsBy([...car.held], name);
    return {
      name,
      words: WORDS[name],
      held: car.held.has(name),
      measured: measured.includes(name),
      with: by === undefined || by === name ? undefined : WITH[by],
      room: roomWords(car, name),
      figures: isRoomName(name)
        ? { of: roomIsOf(name), given: car.rooms[name] ? roomFigures(name, car.rooms[name], car.style) : '' }
        : undefined,
      ways: isWordedRoomName(name)
        ? ROOMS_IN_WORDS[name].map((way) => {
            const room: readonly string[] | undefined = car.rooms[name];
            return { name: way, words: wayWords(name, way), open: room?.includes(way) ?? true };
          })
        : undefined,
    };
  });
}

/** "As far as given: the pitman ball on an arm 5 in to 7 in long." Empty where nothing is. */
export function roomsWords(rooms: Rooms, style: LengthStyle): string {
  const given = HOLDS.flatMap((name) => givenRoom(rooms, name, style) ?? []);
  return given.length === 0 ? '' : `As far as given: ${given.join('; ')}.`;
}

/** "Kept as drawn: the pitman ball, the axle’s stops." */
export function heldWords(held: readonly HoldName[]): string {
  if (held.length === 0) return 'Nothing of the steering is kept as drawn.';
  return `Kept as drawn: ${held.map((name) => WORDS[name]).join(', ')}.`;
}

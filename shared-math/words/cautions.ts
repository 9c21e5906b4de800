import { ballJoints } from '../joints/index.ts';
import type { Layout } from '../layout/index.ts';

// Cautions where risk is chosen, in plain words. They certify nothing and forbid nothing: they say what is known to go
// wrong and who has the say. Rules of law are named with their section and hold where they apply.

/** One thing to know, with where it comes from. */
export interface CautionNote {
  readonly words: string;
  readonly source: string;
}

export interface Caution {
  readonly id: string;
  /** One quiet line, a whole sentence. */
  readonly line: string;
  readonly notes: readonly CautionNote[];
  /** Whether it stands beside a chosen point. */
  readonly standsAt: (point: string, layout: Layout) => boolean;
  /** Whether it stands on the build sheet of a layout. */
  readonly onSheet: (layout: Layout) => boolean;
}

const PRACTICE = 'common practice, no published source';

const DEFER: CautionNote = {
  words:
    'What is allowed is for your local code, the part’s maker and a qualified engineer or certifier to say, not for this board.',
  source: 'a layout check is no approval',
};

/** Balls that sit in an arm which somebody may be tempted to make, bend or weld. */
const IN_ARMS = /^steering\.(dragLinkBall|box\.pitmanBall)$|\.tieRodBall$/;
const ON_RODS = /^location\.(left\.|right\.)?(framePivot|upper\.|lower\.)/;

const NOWHERE = () => false;
const EVERYWHERE = () => true;
const isAssisted = ({ steering }: Layout) => steering.box.assist === 'power';
const hasNoStops = ({ steering }: Layout) => steering.stopAngle === undefined;

export const ARMS: Caution = {
  id: 'arms',
  line: 'Self-made and welded arms can break.',
  notes: [
    {
      words:
        'An arm or link that was made, bent or welded in the shop can break without warning, and then nothing steers.',
      source: PRACTICE,
    },
    {
      words:
        'Many codes take no weld on a steering part but its maker’s own, and some none at all. Ask yours before metal is cut.',
      source:
        'Quebec regulation C-24.2 r. 32, s. 149; Maine rule 16-222 chapter 1; an Australian builders’ guide; where they apply',
    },
    {
      words:
        'Do not heat or bend a forged or cast arm: the treatment that made it strong is lost. Take an arm made to the shape you need.',
      source: PRACTICE,
    },
    {
      words:
        'Where welding is allowed, a qualified welder does it and the part is tested for cracks afterwards.',
      source: PRACTICE,
    },
    { words: 'A drag link or tie rod is straight: a bent one springs and buckles.', source: PRACTICE },
    DEFER,
  ],
  standsAt: (point) => IN_ARMS.test(point),
  onSheet: EVERYWHERE,
};

export const LINK_ENDS: Caution = {
  id: 'link-ends',
  line: 'Every link end needs lock and thread.',
  notes: [
    {
      words:
        'Lock every joint the way it was made to be locked: split pin, jam nut, safety wire or locking nut.',
      source: PRACTICE,
    },
    {
      words:
        'Tighten a castle nut to its figure, then on to the next slot, never back, with a new pin. Where it does not line up, face the nut.',
      source: 'an assessors’ article (facing the nut); the rest common practice',
    },
    {
      words:
        'Thread engaged: at least its own diameter in steel, one and a half in aluminium; on steering links builders take one and a half throughout. Never bottomed, and marked so that it can be seen.',
      source: 'a workmanship standard and FED-STD-H28; for steering links common practice',
    },
    {
      words:
        'Studs come with tapers of 1 1/2 and of 2 inches in the foot. Match stud and arm; never ream one to the other by guess. Ask the maker for sizes and loads.',
      source: 'tapers from memory; SAE J491 leaves sizes and loads to the maker',
    },
    {
      words:
        'A rod end bolted from one side can pull off its ball: hold it on both sides, or behind a washer too large to pass.',
      source: PRACTICE,
    },
    {
      words: 'Look at nuts, pins and play again after the first miles.',
      source: PRACTICE,
    },
    DEFER,
  ],
  standsAt: (point, layout) => ballJoints(layout).some(({ id }) => id === point),
  onSheet: EVERYWHERE,
};

export const RODS: Caution = {
  id: 'rods',
  line: 'Rods must never bind in the travel.',
  notes: [
    {
      words:
        'Radius rods have to keep their geometry over the whole travel; rods split from one wishbone are known to bind.',
      source: 'New Zealand low volume vehicle information sheet 05-2011',
    },
    {
      words:
        'With the springs out, take the axle through bump, droop and lock by hand before the first drive.',
      source: PRACTICE,
    },
    DEFER,
  ],
  standsAt: (point) => ON_RODS.test(point),
  onSheet: EVERYWHERE,
};

export const ASSISTANCE: Caution = {
  id: 'assistance',
  line: 'If the pump stops, the effort is back.',
  notes: [
    {
      words: 'When pump or engine stops, the whole effort is back at the rim, at once and often in a bend.',
      source: PRACTICE,
    },
    {
      words:
        'The verdict gives the parking effort without assistance. Try whether whoever drives the car can hold it with that on the move.',
      source: PRACTICE,
    },
    {
      words: 'Some codes test the effort with and without assistance.',
      source:
        'UN Regulation 79 (from memory); United Kingdom single-vehicle approval, section 05; where they apply',
    },
    {
      words:
        'Pump pressure and flow are those of the box’s maker; hoses are rated for them and kept off what is hot or moves.',
      source: PRACTICE,
    },
    DEFER,
  ],
  standsAt: (point, layout) => point === 'steering.box.sectorCentre' && isAssisted(layout),
  onSheet: isAssisted,
};

export const STOPS: Caution = {
  id: 'stops',
  line: 'Without stops the box takes the blow.',
  notes: [
    {
      words: 'Where nothing stops the turn at the axle, the box or a link takes every blow at full lock.',
      source: PRACTICE,
    },
    {
      words:
        'Stops belong at the axle or spindle, alike on both sides, and end the turn before box, links or tyres do.',
      source: PRACTICE,
    },
    {
      words:
        'At the stops a tyre stays an inch or more clear of body and chassis, and both locks are alike within half a turn.',
      source: 'Maryland rule COMAR 11.22.03.04, where it applies',
    },
    {
      words:
        'Turn from lock to lock by hand, up and down the travel, and feel for anything that binds or jams.',
      source: '49 CFR 570.7, where it applies',
    },
    DEFER,
  ],
  standsAt: (point, layout) => /\.wheelCentre$|\.sectorCentre$/.test(point) && hasNoStops(layout),
  onSheet: hasNoStops,
};

export const ROAD_RUN: Caution = {
  id: 'road-run',
  line: 'A simulated road is no road test.',
  notes: [
    {
      words:
        'What drives here is the front of the car seen from ahead: two masses, springs, dampers and tyres as springs. Braking, cornering, pitch, flexing parts, play, friction and what the driver does are left out.',
      source: 'how this board works it out',
    },
    {
      words:
        'Usual figures stand in for what nobody has measured: weigh the car, load its springs and type what you find before you believe a number.',
      source: PRACTICE,
    },
    {
      words:
        'The kick is how far the handwheel would be thrown if the road held the wheels straight. It is no force, and a hand may meet more or less.',
      source: 'how this board works it out',
    },
    {
      words:
        'First drives are slow, on a closed place, with nuts, pins and locks looked at before and after.',
      source: PRACTICE,
    },
    DEFER,
  ],
  standsAt: NOWHERE,
  onSheet: NOWHERE,
};

/** All of them, in the order in which they are read. A new one is one entry here and stands where it says. */
export const CAUTIONS: readonly Caution[] = [ARMS, LINK_ENDS, RODS, ASSISTANCE, STOPS, ROAD_RUN];

/** What to know at a chosen point; empty if there is no risk of its own. */
export function cautionsAt(layout: Layout, point: string): readonly Caution[] {
  return CAUTIONS.filter(({ standsAt }) => standsAt(point, layout));
}

/** What to know of a whole layout, for its build sheet. */
export function cautionsOf(layout: Layout): readonly Caution[] {
  return CAUTIONS.filter(({ onSheet }) => onSheet(layout));
}

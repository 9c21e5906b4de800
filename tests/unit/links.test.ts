import { describe, expect, test } from 'vitest';
import { inTheMirror, readLayout } from '../../shared-math/layout/index.ts';
import {
  type CutLength,
  cutLength,
  drawnLength,
  linkMaking,
  type ThreadedMaking,
} from '../../shared-math/links/index.ts';
import { sectionWords } from '../../shared-math/shelf/index.ts';
import { MM_PER_INCH } from '../../shared-math/units/index.ts';
import { LOCATIONS, layoutOf, rawLayout } from '../support/layouts.ts';

const inches = (value: number) => value * MM_PER_INCH;

function cutOf(layout: ReturnType<typeof layoutOf>, key: 'dragLink' | 'tieRod' = 'dragLink'): CutLength {
  const cut = cutLength(linkMaking(layout, key), drawnLength(layout, key) as number);
  if (!cut.ok) throw new Error(cut.failure);
  return cut.value;
}

function refusal(over: object): string {
  const outcome = readLayout(rawLayout({ ...over }));
  return outcome.ok ? '' : `${outcome.failure.path}: ${outcome.failure.reason}`;
}

/** A drag link whose ends are given in full: 5/8-18, ball centre to tip 2 5/8 in, 1 5/8 in threaded, a 3/8 in jam nut. */
const END = {
  kind: 'threaded',
  takeOff: inches(1.5),
  thread: { diameter: inches(5 / 8), pitch: MM_PER_INCH / 18, hand: 'right' },
  reach: inches(2 + 5 / 8),
  threadLength: inches(1 + 5 / 8),
  jamNut: inches(3 / 8),
  adjuster: inches(1 / 16),
} as const;
const GIVEN = {
  diameters: { dragLink: 25.4 },
  links: {
    dragLink: {
      section: 'tube',
      wall: 3.96,
      material: 'chromoly',
      offset: 0,
      ends: { pitman: END, steeringArm: { ...END, thread: { ...END.thread, hand: 'left' } } },
    },
  },
} as const;

describe('what a link is made of', () => {
  test('is read, kept and refused by path', () => {
    expect(refusal({ ...GIVEN })).toBe('');
    expect(refusal({ links: {} })).toBe('');
    expect(refusal({ links: { dragLink: { wall: 0 } } })).toBe(
      'links.dragLink.wall: must be more than 0, found 0',
    );
    expect(refusal({ links: { dragLink: { outside: 22 } } })).toMatch(/^links\.dragLink/);
    expect(refusal({ links: { dragLink: { ends: { left: END } } } })).toMatch(/^links\.dragLink\.ends/);
    expect(refusal({ diameters: { tieRod: 20 }, links: { tieRod: { wall: 10 } } })).toBe(
      'links.tieRod.wall: must be less than half of the outside, 20 mm; found 10',
    );
    expect(refusal({ links: { rods: { section: 'rod', wall: 3 } } })).toBe(
      'links.rods.wall: a solid rod has no wall',
    );
    expect(
      refusal({ links: { tieRod: { ends: { left: { kind: 'threaded', reach: 50, threadLength: 50 } } } } }),
    ).toBe('links.tieRod.ends.left.threadLength: must be less than reach, 50 mm; found 50');
    expect(
      refusal({ links: { tieRod: { ends: { left: { kind: 'welded', thread: { diameter: 12 } } } } } }),
    ).toMatch(/^links\.tieRod\.ends\.left/);
  });

  test('is as given, and says of every other figure that it is assumed', () => {
    const given = linkMaking(layoutOf(GIVEN), 'dragLink');
    expect(given).toMatchObject({
      section: { value: 'tube', assumed: false },
      outside: { value: 25.4, assumed: false },
      wall: { value: 3.96, assumed: false },
      material: { value: 'chromoly', assumed: false },
      ends: [
        {
          name: 'pitman',
          kindAssumed: false,
          hand: 'right',
          takeOff: { value: inches(1.5), assumed: false },
        },
        { name: 'steeringArm', hand: 'left' },
      ],
    });
    const usual = linkMaking(layoutOf(), 'dragLink');
    const figures = [usual.section, usual.outside, usual.wall, usual.material, usual.offset];
    expect(figures.map((each) => each?.assumed)).toEqual([true, true, true, true, true]);
    for (const end of usual.ends) {
      expect(end.kindAssumed).toBe(true);
      for (const each of Object.values(end))
        if (typeof each === 'object') expect((each as { assumed: boolean }).assumed).toBe(true);
    }
  });

  test('a rod has no wall; hairpins are thinner and welded at the axle, four bars are threaded at both ends', () => {
    expect(linkMaking(layoutOf({ links: { tieRod: { section: 'rod' } } }), 'tieRod').wall).toBeUndefined();
    const hairpins = linkMaking(layoutOf(), 'rods');
    expect(hairpins.outside).toEqual({ value: 19, assumed: true });
    expect(hairpins.ends.map(({ kind }) => kind)).toEqual(['welded', 'threaded']);
    const bars = linkMaking(layoutOf({ location: LOCATIONS['four-bar'] }), 'rods');
    expect(bars.outside).toEqual({ value: 22, assumed: true });
    expect(bars.ends.map(({ kind }) => kind)).toEqual(['threaded', 'threaded']);
  });

  test('an assumed wall never fills a thin tube', () => {
    for (const outside of [6, 8, 12, 22, 60]) {
      const { wall } = linkMaking(layoutOf({ diameters: { dragLink: outside } }), 'dragLink');
      expect(2 * (wall?.value as number)).toBeLessThan(outside);
    }
  });

  test('in the mirror the tie rod’s ends change sides', () => {
    const read = readLayout(rawLayout({ links: { tieRod: { ends: { left: END } } } }));
    if (!read.ok) throw new Error(read.failure.reason);
    expect(inTheMirror(read.value).links?.tieRod?.ends).toEqual({ right: END });
  });
});

describe('how long a tube is cut', () => {
  // By hand on a bench drawing: the ball centres stand 1 1/2 in from each tube end, so 3 in come off.
  test('is centre to centre less both take-offs', () => {
    const layout = layoutOf(GIVEN);
    const cut = cutOf(layout);
    expect(cut.cut).toBeCloseTo((drawnLength(layout, 'dragLink') as number) - inches(3), 9);
    expect(cut.assumed).toBe(false);
    expect(cut.steps.map(({ of }) => of)).toEqual(['centre-to-centre', 'take-off', 'take-off']);
    expect(cut.steps.reduce((sum, { adds }) => sum + adds, 0)).toBeCloseTo(cut.cut, 9);
  });

  // By hand: of 2 5/8 in, 1 1/2 in stand out, 1 1/8 in is in the tube; 1 1/2 diameters are 15/16 in, so 3/16 in can be
  // screwed out. 1 in of the end is bare, so 1/2 in of thread shows, of which the nut takes 3/8: 1/8 in can go in.
  test('the ends’ thread and jam nut room come out as on the bench', () => {
    const [room] = cutOf(layoutOf(GIVEN)).rooms;
    expect(room?.engaged).toBeCloseTo(inches(9 / 8), 9);
    expect(room?.wanted).toBeCloseTo(inches(15 / 16), 9);
    expect(room?.out).toBeCloseTo(inches(3 / 16), 9);
    expect(room?.jamRoom).toBeCloseTo(inches(1 / 8), 9);
    expect(room?.in).toBeCloseTo(inches(1 / 8), 9);
    expect(room?.engagedLeast).toBeCloseTo(inches(9 / 8 - 1 / 16), 9);
    expect(room?.jamRoomLeast).toBeCloseTo(inches(1 / 8 - 1 / 16), 9);
    expect(room?.short).toBe('');
    const { shorter, longer } = cutOf(layoutOf(GIVEN));
    expect(shorter).toBeCloseTo(inches(1 / 4), 9);
    expect(longer).toBeCloseTo(inches(3 / 8), 9);
  });

  test.each([
    ['thread', { takeOff: inches(1.8) }],
    ['jam-nut', { takeOff: inches(1.4) }],
    ['both', { adjuster: inches(0.25) }],
    ['both', { takeOff: inches(1.7), threadLength: inches(1), jamNut: inches(3 / 8) }],
  ] as const)('short of %s is said so', (short, over) => {
    const layout = layoutOf({ links: { dragLink: { ends: { pitman: { ...END, ...over } } } } });
    expect(cutOf(layout).rooms[0]?.short).toBe(short);
  });

  test('a take-off that nobody gave stands half-way in its adjustment, and is marked assumed', () => {
    for (const diameter of [12, 12.7, 15.875, 16, 17.4625, 19.05, 20]) {
      const layout = layoutOf({
        links: { dragLink: { ends: { pitman: { kind: 'threaded', thread: { diameter } } } } },
      });
      const [end] = linkMaking(layout, 'dragLink').ends;
      expect(end.takeOff.assumed).toBe(true);
      const [room] = cutOf(layout).rooms;
      expect(room?.out, String(diameter)).toBeCloseTo(room?.in as number, 9);
      expect(room?.assumed).toBe(true);
    }
  });

  test('a bend makes the tube longer by what one bend in the middle takes, and is marked so', () => {
    const straight = cutOf(layoutOf(GIVEN));
    const bent = cutOf(layoutOf({ ...GIVEN, links: { dragLink: { ...GIVEN.links.dragLink, offset: 40 } } }));
    const length = drawnLength(layoutOf(GIVEN), 'dragLink') as number;
    // Pythagoras twice: from each end to the bend.
    expect(bent.cut - straight.cut).toBeCloseTo(2 * Math.sqrt((length / 2) ** 2 + 1600) - length, 9);
    expect(bent.assumed).toBe(true);
  });

  test('where the ends leave no tube, that is said', () => {
    const layout = layoutOf({
      links: {
        dragLink: {
          ends: { pitman: { ...END, takeOff: 4000 } },
        },
      },
    });
    expect(cutLength(linkMaking(layout, 'dragLink'), drawnLength(layout, 'dragLink') as number)).toEqual({
      ok: false,
      failure: 'no-tube',
    });
  });

  test('any plausible thread gives ends whose figures are numbers', () => {
    for (const diameter of [3, 8, 25, 80])
      for (const threadLength of [undefined, 5, 200]) {
        const end = { kind: 'threaded', thread: { diameter }, ...(threadLength ? { threadLength } : {}) };
        const layout = layoutOf({ links: { tieRod: { ends: { left: end } } } });
        const [made] = linkMaking(layout, 'tieRod').ends as [ThreadedMaking, ThreadedMaking];
        expect(made.reach.value).toBeGreaterThan(made.threadLength.value);
        for (const room of cutOf(layout, 'tieRod').rooms)
          for (const figure of Object.values(room ?? {}))
            if (typeof figure === 'number') expect(Number.isFinite(figure)).toBe(true);
      }
  });
});

// Common practice, no published source: shops that buy in inches ask for tube of 7/8 in with a wall of 5/32 in.
test('a tube of which nobody said anything is called in inches as the trade calls it, and as it is kept in millimetres', () => {
  const words = (unit: 'in' | 'mm', layout = layoutOf()) =>
    sectionWords(linkMaking(layout, 'dragLink'), { unit, fraction: 16 });
  expect(words('in')).toBe('tube 7/8 in outside (assumed), wall 5/32 in (assumed), drawn steel (assumed)');
  expect(words('mm')).toBe('tube 22 mm outside (assumed), wall 4 mm (assumed), drawn steel (assumed)');
  // One that was given stays what was given, to the last decimal.
  expect(words('in', layoutOf({ diameters: { dragLink: 22 } }))).toMatch(/^tube 0\.866 in outside, /);
});

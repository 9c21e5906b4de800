import { describe, expect, test } from 'vitest';
import {
  hardpoints,
  LAYOUT_VERSION,
  type LayoutDocument,
  moveHardpoint,
  parseLayout,
  readEdited,
  readLayout,
  refusalLine,
  resolveLayout,
} from '../../shared-math/layout/index.ts';
import { documentOf, LOCATIONS, rawLayout } from '../support/layouts.ts';

// biome-ignore lint/suspicious/noExplicitAny: documents are spoiled here on purpose
type Spoiled = any;

function refusal(spoil: (raw: Spoiled) => void): string {
  const raw = structuredClone(rawLayout());
  spoil(raw);
  const outcome = readLayout(raw);
  // As an edit of a document that was taken before, it is refused alike.
  const taken = readLayout(rawLayout());
  if (taken.ok && typeof raw === 'object')
    expect(readEdited(taken.value, raw as unknown as LayoutDocument)).toEqual(outcome);
  return outcome.ok ? 'accepted' : refusalLine(outcome.failure);
}

test('an edited branch is taken in, and what was not edited is the same object as before', () => {
  const taken = documentOf(rawLayout());
  const moved = moveHardpoint(taken, 'steering.box.pitmanBall', [-500, 450, 300]);
  const outcome = readEdited(taken, moved);
  if (!outcome.ok) throw new Error(refusalLine(outcome.failure));
  expect(outcome.value).toEqual(moved);
  expect(outcome.value.axle).toBe(taken.axle);
  expect(outcome.value.steering).not.toBe(taken.steering);
  const { studs: _, ...bare } = { ...taken, studs: { 'lateral.frame': [1, 0, 0] as const } };
  const bored = readEdited({ ...taken, studs: { 'lateral.frame': [1, 0, 0] } }, bare);
  expect(bored.ok && 'studs' in bored.value).toBe(false);
});

describe('a bad document is refused with its place and reason', () => {
  test.each<[string, (raw: Spoiled) => void, string]>([
    ['unknown key', (r) => (r.axle.left.colour = 'red'), 'axle.left: unknown key "colour"'],
    ['unknown key at the top', (r) => (r.extra = 1), 'unknown key "extra"'],
    [
      'text for a number',
      (r) => (r.axle.left.kingpinTop[2] = '395'),
      'axle.left.kingpinTop[2]: expected a number, found the text "395"',
    ],
    [
      'NaN',
      (r) => (r.car.wheelbase = Number.NaN),
      'car.wheelbase: expected a number, found not a finite number',
    ],
    [
      'infinity',
      (r) => (r.steering.box.ratio = Number.POSITIVE_INFINITY),
      'steering.box.ratio: expected a number, found not a finite number',
    ],
    ['null', (r) => (r.travel.bump = null), 'travel.bump: expected a number, found null'],
    ['missing part', (r) => delete r.steering.box, 'steering.box: missing; expected an object { }'],
    [
      'a point of two',
      (r) => (r.steering.dragLinkBall = [1, 2]),
      'steering.dragLinkBall: expected 3 entries, found a list of 2',
    ],
    [
      'absurdly large',
      (r) => (r.steering.dragLinkBall[0] = 1e12),
      'steering.dragLinkBall[0]: must be at most 20000, found 1000000000000',
    ],
    [
      'newer version',
      (r) => (r.version = LAYOUT_VERSION + 1),
      `version: this document is version ${LAYOUT_VERSION + 1}, newer than this program reads (${LAYOUT_VERSION}); use a newer Toeboard`,
    ],
    ['no version', (r) => delete r.version, 'version: expected a whole number, 1 or more'],
    [
      'other format',
      (r) => (r.format = 'drawing'),
      'format: expected "toeboard-layout": this is not a layout document',
    ],
    [
      'unknown kind',
      (r) => (r.location.kind = 'strings'),
      'location.kind: expected "hairpins" or "split-rods" or "wishbone" or "four-bar" or "parallel-leaf" or "quarter-elliptic"',
    ],
    [
      'right side misspelt',
      (r) => (r.axle.right = 'mirrored'),
      'axle.right: expected "mirror" or an object { }, found the text "mirrored"',
    ],
    [
      'fault inside a right side',
      (r) => (r.axle.right = { ...r.axle.left, kingpinTop: [0, 'x', 0] }),
      'axle.right.kingpinTop[1]: expected a number, found the text "x"',
    ],
    [
      'kingpin of no length',
      (r) => (r.axle.left.kingpinTop = [...r.axle.left.kingpinBottom]),
      'axle.left.kingpinTop: on the same spot as kingpinBottom: the kingpin has no length',
    ],
    [
      'kingpin upside down',
      (r) => (r.axle.left.kingpinTop[2] = 200),
      'axle.left.kingpinTop[2]: must be above kingpinBottom',
    ],
    [
      'drag link of no length',
      (r) => (r.steering.dragLinkBall = [...r.steering.box.pitmanBall]),
      'steering.dragLinkBall: on the same spot as the pitman ball: the drag link has no length',
    ],
    [
      'zero sector axis',
      (r) => (r.steering.box.sectorAxis = [0, 0, 0]),
      'steering.box.sectorAxis: has no length, so it points nowhere',
    ],
    [
      'pitman ball on the sector shaft',
      (r) => (r.steering.box.pitmanBall = [-800, 420, 490]),
      'steering.box.pitmanBall: lies on the sector shaft: the pitman arm has no length',
    ],
    [
      'bar of no length',
      (r) => (r.lateral = { kind: 'bar', axle: [1, 2, 3], frame: [1, 2, 3] }),
      'lateral.frame: on the same spot as its axle end: the bar has no length',
    ],
    [
      'ball on the kingpin',
      (r) => (r.axle.left.tieRodBall = [0, 640, 330]),
      "axle.left.tieRodBall: lies on the kingpin's line, so it cannot steer the wheel",
    ],
    [
      'left wheel on the right',
      (r) => (r.axle.left.wheelCentre[1] = -710),
      'axle.left.wheelCentre[1]: the left wheel must stand at positive y (y points left)',
    ],
    [
      'a photo without its view',
      (r) => (r.photos = [{}]),
      'photos[0].view: missing; expected "side" or "top" or "front"',
    ],
    [
      'a photo by another name than its hash',
      (r) => (r.photos = [{ view: 'side', hash: '../x' }]),
      'photos[0].hash: expected a hash of 64 hexadecimal digits',
    ],
    [
      'a mass below nothing',
      (r) => (r.ride = { sprungMass: -300 }),
      'ride.sprungMass: must be more than 0, found -300',
    ],
    [
      'a spring of a kind that there is not',
      (r) => (r.ride = { spring: { kind: 'air', rate: 20 } }),
      'ride.spring.kind: expected "rate" or "leaf" or "measured"',
    ],
    [
      'half a leaf',
      (r) =>
        (r.ride = {
          spring: { kind: 'leaf', lie: 'across', length: 900, width: 45, thickness: 6, leaves: 7.5 },
        }),
      'ride.spring.leaves: expected a whole number, found 7.5',
    ],
    [
      'more full leaves than leaves',
      (r) =>
        (r.ride = {
          spring: {
            kind: 'leaf',
            lie: 'across',
            length: 900,
            width: 45,
            thickness: 6,
            leaves: 7,
            fullLeaves: 8,
          },
        }),
      'ride.spring.fullLeaves: must be at most the number of leaves, 7; found 8',
    ],
  ])('%s', (_, spoil, line) => {
    expect(refusal(spoil)).toBe(line);
  });

  test('each kind of location has its own impossible links', () => {
    const bars = structuredClone(LOCATIONS['four-bar']) as Spoiled;
    bars.left.upper.frame = bars.left.upper.axle;
    expect(refusal((r) => (r.location = bars))).toMatch(/^location\.left\.upper\.frame: on the same spot/);
    const leaf = structuredClone(LOCATIONS['parallel-leaf']) as Spoiled;
    leaf.left.seat[0] = 900;
    expect(refusal((r) => (r.location = leaf))).toMatch(/^location\.left\.seat: must lie between/);
  });

  test('what is not an object at all', () => {
    for (const value of [null, 3, 'text', [], true, undefined]) expect(readLayout(value).ok).toBe(false);
    expect(parseLayout('{"format": ')).toMatchObject({
      ok: false,
      failure: { reason: expect.stringMatching(/^not JSON: /) },
    });
    expect(parseLayout('\u0000\u0007\ufffd\n\n').ok).toBe(false);
    const noise = parseLayout('\u0001\n\u0002');
    expect(noise.ok || /^[^\p{Cc}]*$/u.test(noise.failure.reason)).toBe(true);
    expect(parseLayout('x'.repeat(2_000_001))).toMatchObject({
      ok: false,
      failure: { reason: expect.stringMatching(/too large/) },
    });
    expect(readLayout(JSON.parse('{"__proto__": {"format": "toeboard-layout", "version": 1}}')).ok).toBe(
      false,
    );
  });

  test('a good one is taken as it is, a byte order mark and left-out lists too', () => {
    const raw = rawLayout();
    expect(parseLayout(`\ufeff${JSON.stringify(raw)}`)).toEqual({ ok: true, value: raw });
    const { rails: _r, obstacles: _o, photos: _p, shaft: _s, ride: _i, notes: _n, ...short } = raw;
    expect(readLayout(short)).toEqual({ ok: true, value: { ...raw, notes: '' } });
  });
});

/** A shaft whose input stands 45 degrees off the square to the sector shaft of a side box. */
function skewShaft() {
  return {
    column: { end: [-1300, 400, 800], axis: [2, 0, -1] },
    box: { end: [-900, 480, 520], axis: [1, 1, 0] },
    joints: [{ kind: 'single', centre: [-1290, 400, 795] }],
    shafts: [],
    supports: [],
  };
}

describe('a document of an older version', () => {
  test('of version 1 is lifted: it tells nothing of what the car rides on', () => {
    const { ride: _, ...rest } = rawLayout();
    const old = { ...rest, version: 1 };
    const kept = structuredClone(old);
    expect(readLayout(old)).toEqual({ ok: true, value: { ...rest, version: LAYOUT_VERSION, ride: null } });
    expect(old).toEqual(kept);
  });

  test('of version 2 is lifted: it says nothing of origins, of the box’s angle or of where the driver sits', () => {
    const old = { ...rawLayout({ shaft: skewShaft() }), version: 2 };
    expect(readLayout(old)).toEqual({ ok: true, value: { ...old, version: LAYOUT_VERSION } });
  });

  test('is refused for what is wrong in it', () => {
    const { ride: _, ...rest } = rawLayout();
    const reason = (raw: unknown) => {
      const outcome = readLayout(raw);
      return outcome.ok ? 'accepted' : refusalLine(outcome.failure);
    };
    expect(reason({ ...rest, version: 1, travel: { bump: -1, rebound: 75, roll: 3 } })).toBe(
      'travel.bump: must be at least 0, found -1',
    );
    expect(reason({ ...rest, version: 1, ride: { tyreRate: -1 } })).toBe(
      'ride.tyreRate: must be more than 0, found -1',
    );
    expect(reason({ ...rest, version: 0 })).toBe('version: expected a whole number, 1 or more');
  });
});

describe('hardpoints', () => {
  test('each is where the document says, with its carrier, and mirrored ones know their twin', () => {
    const points = hardpoints(documentOf(rawLayout()));
    const find = (id: string) => points.find((point) => point.id === id);
    expect(find('axle.right.kingpinTop')).toEqual({
      id: 'axle.right.kingpinTop',
      name: 'Right kingpin, top',
      carrier: 'axle-right',
      at: [-7, -631, 395],
      twin: 'axle.left.kingpinTop',
    });
    expect(find('steering.box.pitmanBall')).toMatchObject({ carrier: 'pitman', name: 'Pitman ball' });
    expect(new Set(points.map((point) => point.id)).size).toBe(points.length);
  });

  test('moving a point that carries none moves it there and nothing else; a mirrored right one moves its left twin', () => {
    for (const location of Object.values(LOCATIONS)) {
      const before = documentOf(rawLayout({ location }));
      for (const point of hardpoints(before)) {
        // The wheel centres carry the whole axle: tests/unit/axle-group.test.ts.
        if (point.id.endsWith('.wheelCentre')) continue;
        const to = [point.at[0] + 3, point.at[1] - 2, point.at[2] + 5] as const;
        const after = moveHardpoint(before, point.id, to);
        for (const now of hardpoints(after)) {
          const old = hardpoints(before).find((entry) => entry.id === now.id)!;
          const isBoxArm = point.id === 'steering.box.sectorCentre' && now.id === 'steering.box.pitmanBall';
          if (now.id === point.id) expect(now.at).toEqual(to);
          else if (now.id === point.twin) expect(now.at).toEqual([to[0], -to[1], to[2]]);
          else if (!isBoxArm) expect(now.at).toEqual(old.at);
        }
      }
      expect(before).toEqual(documentOf(rawLayout({ location })));
    }
  });

  test('the steering box takes its pitman ball along', () => {
    const before = documentOf(rawLayout());
    const after = moveHardpoint(before, 'steering.box.sectorCentre', [-790, 510, 500]);
    expect(after.steering.box.pitmanBall).toEqual([-790, 510, 360]);
  });

  test('a mirrored side has y negated however deep it lies, and angles as they are', () => {
    const layout = resolveLayout(documentOf(rawLayout({ location: LOCATIONS['four-bar'] })));
    expect(layout.location.kind === 'four-bar' && layout.location.right.upper.frame).toEqual([
      -645, -415, 405,
    ]);
    expect(layout.axle.right.camber).toBe(layout.axle.left.camber);
  });
});

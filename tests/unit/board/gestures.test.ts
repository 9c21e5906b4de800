import { beforeEach, describe, expect, test } from 'vitest';
import type { Hardpoint } from '../../../shared-math/layout/index.ts';
import {
  type Gesture,
  type Grip,
  type Hands,
  type Hold,
  idle,
  type PointerNews,
  type Signal,
} from '../../../src-renderer/board/gestures/index.ts';
import type { Handle } from '../../../src-renderer/board/handles.ts';

const PITMAN: Hardpoint = {
  id: 'steering.box.pitmanBall',
  name: 'Pitman ball',
  carrier: 'pitman',
  at: [0, 0, 0],
};
const TYRE: Hold = { take: () => undefined };
const HANDLE: Handle = { view: 'side', point: PITMAN, x: 100, y: 100 };

/** A board without a canvas: one handle at 100, 100, a tyre from 500 on to the right, and a list of what was done. */
class PlainHands implements Hands {
  done: string[] = [];
  refuses = false;
  handleAt(x: number, y: number) {
    return Math.hypot(x - 100, y - 100) < 14 ? HANDLE : undefined;
  }
  hover(handle: Handle | undefined) {
    this.done.push(`hover ${handle?.point.name ?? 'nothing'}`);
  }
  select(handle: Handle | undefined) {
    this.done.push(`select ${handle?.point.name ?? 'nothing'}`);
  }
  takeUp(): Grip | undefined {
    if (this.refuses) return undefined;
    this.done.push('take up');
    return {
      moveTo: (right, down, { shift, alt }) =>
        void this.done.push(`to ${right},${down}${shift ? ' shift' : ''}${alt ? ' alt' : ''}`),
      putDown: () => void this.done.push('put down'),
      giveBack: () => void this.done.push('give back'),
    };
  }
  holdAt(x: number): Hold | undefined {
    return x >= 500 ? TYRE : undefined;
  }
  takeHold(hold: Hold): Grip | undefined {
    if (this.refuses) return undefined;
    this.done.push(hold === TYRE ? 'take hold of the tyre' : 'take hold of another');
    return {
      moveTo: (right, down) => void this.done.push(`pull ${right},${down}`),
      putDown: () => void this.done.push('let go'),
      giveBack: () => void this.done.push('give back'),
    };
  }
  panBy(right: number, down: number) {
    this.done.push(`pan ${right},${down}`);
  }
  zoomAt(x: number, y: number, factor: number) {
    this.done.push(`zoom ${x},${y} ${factor.toFixed(2)}`);
  }
}

let hands: PlainHands;
let gesture: Gesture;
beforeEach(() => {
  hands = new PlainHands();
  gesture = idle;
});

const news = (x: number, y: number, over: Partial<PointerNews> = {}): PointerNews => ({
  id: 1,
  x,
  y,
  button: 0,
  kind: 'mouse',
  shift: false,
  alt: false,
  ...over,
});
const send = (...signals: Signal[]) => {
  for (const signal of signals) gesture = gesture.on(signal, hands);
};
const down = (x: number, y: number, over?: Partial<PointerNews>): Signal => ({
  type: 'down',
  pointer: news(x, y, over),
});
const move = (x: number, y: number, over?: Partial<PointerNews>): Signal => ({
  type: 'move',
  pointer: news(x, y, over),
});
const up = (x: number, y: number, over?: Partial<PointerNews>): Signal => ({
  type: 'up',
  pointer: news(x, y, over),
});

describe('an idle hand', () => {
  test('shows what it is over', () => {
    send(move(100, 104), move(300, 300));
    expect(hands.done).toEqual(['hover Pitman ball', 'hover nothing']);
    expect(gesture.name).toBe('idle');
  });

  test('a finger hovers over nothing', () => {
    send(move(100, 104, { kind: 'touch' }));
    expect(hands.done).toEqual([]);
  });

  test('the right button does nothing, the middle one moves the paper even over a handle', () => {
    send(down(100, 100, { button: 2 }));
    expect(gesture.name).toBe('idle');
    send(down(100, 100, { button: 1 }), move(110, 95));
    expect(gesture.name).toBe('panning');
    expect(hands.done.at(-1)).toBe('pan 10,-5');
  });
});

describe('a pull', () => {
  test('begins on a tyre once the press is no trembling, and ends as the hand opens', () => {
    send(down(510, 100), move(511, 101));
    expect(gesture.name).toBe('pointing');
    send(move(510, 80), move(510, 60), up(510, 60));
    expect(hands.done).toEqual([
      'hover nothing',
      'take hold of the tyre',
      'pull 0,-20',
      'pull 0,-40',
      'let go',
    ]);
    expect(gesture.name).toBe('idle');
  });

  test('is given back by Escape and by a pointer that is taken away', () => {
    send(down(510, 100), move(510, 80), { type: 'escape' });
    send(down(510, 100), move(510, 80), { type: 'lost', id: 1 });
    expect(hands.done.filter((done) => done === 'give back')).toHaveLength(2);
  });

  test('on a tyre that cannot be pulled moves the paper, and so does the middle button', () => {
    hands.refuses = true;
    send(down(510, 100), move(510, 80), up(510, 80));
    expect(hands.done.at(-1)).toBe('pan 0,-20');
    hands.refuses = false;
    send(down(510, 100, { button: 1 }), move(515, 100));
    expect(hands.done.at(-1)).toBe('pan 5,0');
  });
});

describe('a press', () => {
  test('on a handle chooses it, with all the trembling of a hand', () => {
    send(down(101, 99), move(103, 100), up(103, 100));
    expect(gesture.name).toBe('idle');
    expect(hands.done).toEqual(['hover Pitman ball', 'select Pitman ball']);
  });

  test('on empty paper chooses nothing', () => {
    send(down(300, 300), up(300, 300));
    expect(hands.done.at(-1)).toBe('select nothing');
  });

  test('is forgotten on Escape and when the pointer is taken away', () => {
    send(down(100, 100), { type: 'escape' });
    expect(gesture.name).toBe('idle');
    send(down(100, 100), { type: 'lost', id: 1 });
    expect(gesture.name).toBe('idle');
    expect(hands.done.filter((entry) => entry.startsWith('select'))).toEqual([]);
  });
});

describe('a drag of a point', () => {
  test('chooses it, carries it from where it was taken up, and puts it down', () => {
    send(down(102, 99), move(112, 99), move(120, 90), up(120, 90));
    expect(hands.done).toEqual([
      'hover Pitman ball',
      'select Pitman ball',
      'take up',
      'to 10,0',
      'to 18,-9',
      'put down',
    ]);
    expect(gesture.name).toBe('idle');
  });

  test.each<[string, Signal]>([
    ['Escape', { type: 'escape' }],
    ['a pointer that the system takes away', { type: 'lost', id: 1 }],
  ])('%s gives it back, and the rest of the press does nothing', (_, signal) => {
    send(down(100, 100), move(120, 120), signal, move(140, 140), up(140, 140));
    expect(hands.done).toContain('give back');
    expect(hands.done).not.toContain('put down');
    expect(gesture.name).toBe('idle');
  });

  test('after the pointer is up, that its capture ends changes nothing', () => {
    send(down(100, 100), move(120, 120), up(120, 120), { type: 'lost', id: 1 });
    expect(hands.done.filter((entry) => entry === 'put down')).toHaveLength(1);
    expect(hands.done).not.toContain('give back');
  });

  test('follows Shift and Alt as they go down and up', () => {
    send(
      down(100, 100),
      move(120, 130),
      { type: 'keys', shift: true, alt: false },
      { type: 'keys', shift: false, alt: true },
      move(121, 130, { alt: true }),
    );
    expect(hands.done.slice(-4)).toEqual(['to 20,30', 'to 20,30 shift', 'to 20,30 alt', 'to 21,30 alt']);
  });

  test('is not disturbed by a second finger', () => {
    send(down(100, 100), move(120, 120), down(300, 300, { id: 2 }), move(310, 310, { id: 2 }));
    expect(gesture.name).toBe('dragging');
    expect(hands.done.at(-1)).toBe('to 20,20');
    send({ type: 'lost', id: 2 }, up(120, 120));
    expect(hands.done.at(-1)).toBe('put down');
  });

  test('does not begin where the point cannot be moved', () => {
    hands.refuses = true;
    send(down(100, 100), move(120, 120));
    expect(gesture.name).toBe('idle');
    expect(hands.done).toEqual(['hover Pitman ball', 'select Pitman ball']);
  });
});

describe('moving the paper', () => {
  test('follows the pointer by every step', () => {
    send(down(300, 300), move(310, 300), move(315, 320), up(315, 320));
    expect(hands.done).toEqual(['hover nothing', 'pan 10,0', 'pan 5,20']);
    expect(gesture.name).toBe('idle');
  });
});

describe('two fingers', () => {
  const first = { id: 1, kind: 'touch' } as const;
  const second = { id: 2, kind: 'touch' } as const;

  test('zoom about their middle by how far they part', () => {
    send(down(200, 200, first), down(300, 200, second), move(400, 200, second));
    expect(gesture.name).toBe('pinching');
    expect(hands.done.slice(-2)).toEqual(['pan 50,0', 'zoom 300,200 2.00']);
  });

  test('keep what was under them under them', () => {
    // A plain camera that obeys: the sheet's places under both fingers stay with them.
    let camera = { scale: 1, x: 0, y: 0 };
    hands.panBy = (right, down) => {
      camera = { ...camera, x: camera.x + right, y: camera.y + down };
    };
    hands.zoomAt = (x, y, factor) => {
      camera = {
        scale: camera.scale * factor,
        x: x - (x - camera.x) * factor,
        y: y - (y - camera.y) * factor,
      };
    };
    send(down(200, 200, first), down(300, 200, second));
    send(move(180, 200, first), move(340, 200, second), move(180, 200, first));
    const screen = (x: number) => x * camera.scale + camera.x;
    expect(screen(200)).toBeCloseTo(180, 6);
    expect(screen(300)).toBeCloseTo(340, 6);
  });

  test('when one is lifted the other moves the paper', () => {
    send(down(200, 200, first), down(300, 200, second), up(300, 200, second), move(210, 205, first));
    expect(gesture.name).toBe('panning');
    expect(hands.done.at(-1)).toBe('pan 10,5');
    send(up(210, 205, first));
    expect(gesture.name).toBe('idle');
  });

  test('also join a hand that was moving the paper', () => {
    send(down(300, 300, first), move(320, 300, first), down(400, 300, second), move(420, 300, second));
    expect(gesture.name).toBe('pinching');
  });
});

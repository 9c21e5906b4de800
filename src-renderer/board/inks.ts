import type { Role } from '../../shared-math/drawing/index.ts';

/** The board's colours, taken from the page's own tokens, and how heavy a line of weight 1 is. */
export interface Palette {
  readonly paper: string;
  readonly panel: string;
  readonly rule: string;
  readonly shade: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly steel: string;
  readonly stop: string;
  readonly good: string;
  readonly text: string;
  readonly heading: string;
  /** px; grows with the page's type so that large screens get lines to match. */
  readonly weight: number;
}

const token = (style: CSSStyleDeclaration, name: string) => style.getPropertyValue(`--${name}`).trim();

export function readPalette(element: Element): Palette {
  const style = getComputedStyle(element);
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 14;
  return {
    paper: token(style, 'paper'),
    panel: token(style, 'panel'),
    rule: token(style, 'rule'),
    shade: token(style, 'shade'),
    ink: token(style, 'ink'),
    inkSoft: token(style, 'ink-soft'),
    steel: token(style, 'steel'),
    stop: token(style, 'stop'),
    good: token(style, 'good'),
    text: token(style, 'text'),
    heading: token(style, 'heading'),
    weight: rem / 14,
  };
}

function channels(colour: string): [number, number, number] {
  const hex = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour);
  if (!hex) return [128, 128, 128];
  return [1, 2, 3].map((i) => Number.parseInt(hex[i] as string, 16)) as [number, number, number];
}

/** A colour this share of the way from one to another; both written as six hexadecimal digits. */
export function mixed(from: string, to: string, share: number): string {
  const a = channels(from);
  const b = channels(to);
  return `#${a
    .map((value, i) =>
      Math.round(value + ((b[i] as number) - value) * share)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
}

/** How the parts of a role are inked: px at weight 1. */
export interface RoleInk {
  readonly line: string;
  readonly width: number;
  /** Lines inside the part. */
  readonly fineLine: string;
  readonly fineWidth: number;
  readonly tint: string;
  readonly cover: string;
}

export type RoleInks = Record<Role, RoleInk>;

/** Ink on paper: what is bolted on in ink, what the handwheel moves heavier and in steel blue. */
export function carInks(palette: Palette): RoleInks {
  const { ink, paper, panel, shade, steel } = palette;
  const fineLine = mixed(ink, paper, 0.35);
  const plain = { line: ink, width: 1.15, fineLine, fineWidth: 0.75, tint: shade, cover: panel };
  return {
    ground: { ...plain, line: mixed(ink, paper, 0.4), fineLine: mixed(ink, paper, 0.4), width: 1 },
    tyre: {
      ...plain,
      line: mixed(ink, paper, 0.2),
      fineLine: mixed(ink, paper, 0.5),
      width: 1.2,
      fineWidth: 0.9,
    },
    frame: { ...plain, line: mixed(ink, paper, 0.25), width: 1, tint: mixed(shade, paper, 0.2) },
    axle: { ...plain, tint: mixed(shade, panel, 0.35) },
    link: plain,
    spring: { ...plain, width: 1 },
    box: { ...plain, width: 1.25, tint: mixed(shade, panel, 0.15) },
    // Obstacles, which are not of the front end: a pale body under a thin hatch.
    obstacle: {
      ...plain,
      line: mixed(ink, paper, 0.35),
      width: 0.95,
      fineLine: mixed(ink, paper, 0.8),
      fineWidth: 0.7,
      tint: mixed(shade, paper, 0.55),
    },
    steering: {
      line: steel,
      width: 1.75,
      fineLine: mixed(steel, paper, 0.3),
      fineWidth: 1,
      tint: mixed(steel, panel, 0.85),
      cover: mixed(steel, panel, 0.88),
    },
  };
}

/** The same car as a memory of where it stood: pale lines, and no fills but paper. */
export function ghostInks(palette: Palette): RoleInks {
  const inks = carInks(palette);
  const pale = (role: Role): RoleInk => ({
    ...inks[role],
    line: mixed(inks[role].line, palette.paper, 0.68),
    fineLine: mixed(inks[role].line, palette.paper, 0.78),
    width: 1,
    tint: palette.paper,
    cover: palette.paper,
  });
  return {
    ground: pale('ground'),
    tyre: pale('tyre'),
    frame: pale('frame'),
    axle: pale('axle'),
    link: pale('link'),
    spring: pale('spring'),
    box: pale('box'),
    steering: pale('steering'),
    obstacle: pale('obstacle'),
  };
}

/** Another variant of the car: soft ink, heavier where it steers, and nothing covered. */
export function otherInks(palette: Palette): RoleInks {
  const line = mixed(palette.inkSoft, palette.paper, 0.1);
  const clear = 'rgb(0 0 0 / 0%)';
  const held: RoleInk = {
    line: mixed(palette.inkSoft, palette.paper, 0.4),
    width: 0.9,
    fineLine: clear,
    fineWidth: 0.5,
    tint: clear,
    cover: clear,
  };
  const steers: RoleInk = { ...held, line, width: 1.4 };
  return {
    ground: held,
    tyre: held,
    frame: held,
    axle: held,
    link: held,
    spring: held,
    box: steers,
    steering: steers,
    obstacle: held,
  };
}

import type { Role } from '../../../shared-math/drawing/index.ts';
import { carInks, mixed, otherInks, type Palette } from '../inks.ts';

/** How the pictorial inks the parts of a role: px at weight 1. */
export interface PictorialInk {
  readonly line: string;
  readonly width: number;
  readonly edge: string;
  readonly edgeWidth: number;
  /** What lies behind something: thinner and paler than where it is seen. */
  readonly behind: string;
  readonly behindWidth: number;
  /** Faces, from the one full in the light to the one away from it. */
  readonly faces: readonly string[];
}

export type PictorialInks = Record<Role, PictorialInk>;

/** How many tones there are between light and shade: enough that a face which turns does not jump. */
const TONES = 12;

/** How dark the darkest face of a role is, as a share of the way from its paper to its shade. */
const DARKEST: Partial<Record<Role, number>> = { obstacle: 0.85, tyre: 0.55, steering: 0.3 };

/** Ink on paper as in the other views; instead of flat tints faces that take the light. */
export function pictorialInks(palette: Palette): PictorialInks {
  const inks = carInks(palette);
  const roles = Object.keys(inks) as Role[];
  return Object.fromEntries(
    roles.map((role): [Role, PictorialInk] => {
      const { line, width, fineLine, fineWidth } = inks[role];
      const steers = role === 'steering';
      const light = palette.panel;
      const dark = steers ? palette.steel : mixed(palette.shade, palette.ink, 0.08);
      const most = DARKEST[role] ?? 0.75;
      const faces = Array.from({ length: TONES }, (_, i) => {
        const share = i / (TONES - 1);
        return mixed(light, dark, (steers ? 0.08 : 0.1) + (most - 0.1) * share);
      });
      return [
        role,
        {
          line,
          width,
          edge: mixed(steers ? fineLine : line, light, steers ? 0 : 0.45),
          edgeWidth: fineWidth,
          behind: mixed(line, palette.paper, 0.5),
          behindWidth: 0.9,
          faces,
        },
      ];
    }),
  ) as PictorialInks;
}

/** Which face tone of an ink is for a shade from 0 to 1. */
export function toneOf({ faces }: PictorialInk, shade: number): string {
  return faces[Math.min(faces.length - 1, Math.max(0, Math.round(shade * (faces.length - 1))))] as string;
}

/** How another car's lines are drawn: its outlines alone, by role; a role without a line is not drawn. */
export type GhostInk = Partial<Record<Role, { readonly line: string; readonly width: number }>>;

/** Another variant, as in the other views. */
export function otherGhost(palette: Palette, whole: boolean): GhostInk {
  const inks = otherInks(palette);
  const roles: readonly Role[] = [
    'link',
    'spring',
    'box',
    'steering',
    ...(whole ? (['tyre', 'axle'] as const) : []),
  ];
  return Object.fromEntries(roles.map((role) => [role, { line: inks[role].line, width: inks[role].width }]));
}

/** What is proposed: broken lines in the colour of what moves. */
export function proposedGhost(palette: Palette, links: boolean): GhostInk {
  const line = palette.steel;
  return {
    box: { line, width: 1.6 },
    steering: { line, width: 1.6 },
    ...(links ? { link: { line, width: 1 } } : {}),
  };
}

import type { Role } from '../../../shared-math/drawing/index.ts';
import { STROKE_KINDS } from '../../../shared-math/pictorial/index.ts';
import { carInks, ghostInks, mixed, otherInks, type Palette } from '../inks.ts';
import type { LineInk } from '../overlay-painter.ts';

/** How the pictorial inks the parts of a role: px at weight 1. */
export interface PictorialInk {
  /** For each kind of line two, the second of what is chosen; the same ones each time, so that a pen sees where the ink changes. */
  readonly lines: readonly (LineInk | undefined)[];
  /** Faces, from the one full in the light to the one away from it. */
  readonly faces: readonly string[];
}

export type PictorialInks = Record<Role, PictorialInk>;

/** px of line and gap of the ground. */
const GROUND_DASH = [7, 5];
/** px of what lies behind something: thinner and paler than where it is seen. */
const BEHIND = 0.9;
/** How much heavier the lines of what is chosen are. */
const CHOSEN = 1.5;
/** How many tones there are between light and shade: enough that a face which turns does not jump. */
const TONES = 12;

/** How dark the darkest face of a role is, as a share of the way from its paper to its shade. */
const DARKEST: Partial<Record<Role, number>> = { obstacle: 0.85, tyre: 0.55, steering: 0.3 };

type Plain = Omit<LineInk, 'dash'>;

/** The inks of all kinds of lines, plain and chosen. */
function linesOf(strong: Plain, thin: Plain, covered: Plain | undefined): PictorialInk['lines'] {
  return STROKE_KINDS.flatMap((kind) => {
    const ink = kind === 'behind' ? covered : kind === 'edge' ? thin : strong;
    const dash = kind === 'broken' ? GROUND_DASH : [];
    return [1, CHOSEN].map((heavier) => ink && { colour: ink.colour, width: ink.width * heavier, dash });
  });
}

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
      const strong = { colour: line, width };
      const thin = { colour: mixed(steers ? fineLine : line, light, steers ? 0 : 0.45), width: fineWidth };
      const covered = { colour: mixed(line, palette.paper, 0.5), width: BEHIND };
      return [role, { lines: linesOf(strong, thin, covered), faces }];
    }),
  ) as PictorialInks;
}

/** What of a car that has moved is drawn where it stood at ride height: what its frame does not carry. */
const MOVES: readonly Role[] = ['tyre', 'axle', 'link', 'spring', 'steering'];

/** The car as a memory of where it stood, as in the other views: pale lines, faces of paper, and nothing of what lies behind. */
export function rideGhost(palette: Palette): Partial<PictorialInks> {
  const inks = ghostInks(palette);
  return Object.fromEntries(
    MOVES.map((role): [Role, PictorialInk] => {
      const { line, width, fineLine, fineWidth } = inks[role];
      const [strong, thin] = [
        { colour: line, width },
        { colour: fineLine, width: fineWidth },
      ];
      return [role, { lines: linesOf(strong, thin, undefined), faces: [palette.paper] }];
    }),
  );
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

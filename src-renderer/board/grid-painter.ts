import type { Sheet, View } from '../../shared-math/drawing/index.ts';
import type { ShownView } from '../document/nudge.ts';
import type { Camera, Size } from './camera.ts';
import { type GridLine, type GridSteps, gridLines } from './grid.ts';
import { mixed, type Palette } from './inks.ts';

export interface GridPicture {
  /** Lines across the board and down it, with the stretch that each set covers; px. */
  readonly sets: readonly {
    readonly along: 'across' | 'down';
    readonly lines: readonly GridLine[];
    readonly from: number;
    readonly to: number;
  }[];
}

/**
 * The grid of what is shown. Each view counts from the car's own origin, so on the whole sheet the lines left and
 * right of the gap, and above and below it, are sets of their own; `gaps` says where they part, mm of the sheet. The quarter
 * of the pictorial, in which no length along an axis is true, is bare paper.
 */
export function gridPicture(
  steps: GridSteps,
  camera: Camera,
  size: Size,
  sheet: Sheet,
  enlarged: ShownView | null,
  gaps: { readonly right: number; readonly down: number },
): GridPicture {
  const zeroRight = (view: View) => sheet.origin[view][0] * camera.scale + camera.x;
  const zeroDown = (view: View) => sheet.origin[view][1] * camera.scale + camera.y;
  const down = (view: View, from: number, to: number, above = 0) => ({
    along: 'down' as const,
    lines: gridLines(steps, camera.scale, zeroRight(view), from, to),
    from: above,
    to: size.height,
  });
  const across = (view: View, from: number, to: number, before = 0) => ({
    along: 'across' as const,
    lines: gridLines(steps, camera.scale, zeroDown(view), from, to),
    from: before,
    to: size.width,
  });
  if (enlarged === 'pictorial') return { sets: [] };
  if (enlarged) return { sets: [down(enlarged, 0, size.width), across(enlarged, 0, size.height)] };
  const right = Math.min(size.width, Math.max(0, gaps.right * camera.scale + camera.x));
  const middle = Math.min(size.height, Math.max(0, gaps.down * camera.scale + camera.y));
  return {
    sets: [
      down('front', 0, right, middle),
      down('side', right, size.width),
      across('top', 0, middle, right),
      across('side', middle, size.height),
    ],
  };
}

/** Quiet lines, one device pixel wide. */
export function paintGrid(context: CanvasRenderingContext2D, { sets }: GridPicture, palette: Palette): void {
  const sharp = window.devicePixelRatio || 1;
  const pixel = (value: number) => (Math.round(value * sharp) + 0.5) / sharp;
  for (const strong of [false, true]) {
    context.strokeStyle = mixed(palette.paper, palette.rule, strong ? 0.62 : 0.32);
    context.lineWidth = 1 / sharp;
    context.beginPath();
    for (const { along, lines, from, to } of sets)
      for (const line of lines) {
        if (line.strong !== strong) continue;
        const at = pixel(line.at);
        if (along === 'down') {
          context.moveTo(at, from);
          context.lineTo(at, to);
        } else {
          context.moveTo(from, at);
          context.lineTo(to, at);
        }
      }
    context.stroke();
  }
}

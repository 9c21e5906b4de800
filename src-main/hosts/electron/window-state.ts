import { readFileSync, writeFileSync } from 'node:fs';
import { z } from 'zod';
import { parseJson } from '../../../shared-math/outside/index.ts';

const rectangleSchema = z.object({
  x: z.number().int(),
  y: z.number().int(),
  width: z.number().int().positive(),
  height: z.number().int().positive(),
});

const windowStateSchema = z.object({ bounds: rectangleSchema, maximised: z.boolean() });

/** Screen pixels as the system scales them. */
export type Rectangle = z.infer<typeof rectangleSchema>;
export type WindowState = z.infer<typeof windowStateSchema>;

/** The board is drawn for at least this. */
export const WINDOW_MIN = { width: 900, height: 600 } as const;
const WINDOW_USUAL = { width: 1440, height: 900 } as const;

/** Of the title bar, this much has to be on a screen for a hand to take hold of it. */
const HOLD = { width: 120, height: 40 } as const;

/** What was kept of the window, if it can be made sense of; the window is not worth an error. */
export function readWindowState(path: string): WindowState | undefined {
  try {
    const kept = parseJson(readFileSync(path, 'utf8'));
    return kept.ok ? windowStateSchema.safeParse(kept.value).data : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps it for the next start, if the disk takes it. */
export function writeWindowState(path: string, state: WindowState): void {
  try {
    writeFileSync(path, JSON.stringify(state));
  } catch {
    // A full disk must not keep a window from closing.
  }
}

function within(value: number, min: number, max: number): number {
  return Math.min(Math.max(value, min), Math.max(min, max));
}

function sized(wish: { width: number; height: number }, area: Rectangle): { width: number; height: number } {
  return {
    width: within(wish.width, Math.min(WINDOW_MIN.width, area.width), area.width),
    height: within(wish.height, Math.min(WINDOW_MIN.height, area.height), area.height),
  };
}

function overlap(from: number, length: number, otherFrom: number, otherLength: number): number {
  return Math.min(from + length, otherFrom + otherLength) - Math.max(from, otherFrom);
}

/**
 * Where to put the window: where it was, if a screen still shows enough of its title bar, and never larger than that
 * screen; else in the middle of the first screen. `areas` are the screens without their bars, the main one first.
 */
export function placeWindow(state: WindowState | undefined, areas: readonly Rectangle[]): WindowState {
  const bounds = state?.bounds;
  const maximised = state?.maximised ?? false;
  const onto =
    bounds &&
    areas.find(
      (area) =>
        overlap(bounds.x, bounds.width, area.x, area.width) >= HOLD.width &&
        overlap(bounds.y, HOLD.height, area.y, area.height) >= HOLD.height,
    );
  if (bounds && onto) return { bounds: { x: bounds.x, y: bounds.y, ...sized(bounds, onto) }, maximised };
  const area = areas[0] ?? { x: 0, y: 0, ...WINDOW_USUAL };
  const size = sized(bounds ?? WINDOW_USUAL, area);
  const x = area.x + Math.round((area.width - size.width) / 2);
  const y = area.y + Math.round((area.height - size.height) / 2);
  return { bounds: { x, y, ...size }, maximised };
}

import { quoted } from '../../shared-math/outside/index.ts';
import { SWEPT_PARTS, type SweptPart } from '../../shared-math/swept/index.ts';
import type { Arguments } from './arguments.ts';
import { UsageError } from './usage.ts';

/** How `--room` is given. */
export const ROOM_USAGE = `[--room ${SWEPT_PARTS.join(',')}]`;

/** The parts of which a sheet or drawing shows the room that they need, from "tyre,drag-link"; none where nothing is given. */
export function roomsFrom({ values }: Pick<Arguments, 'values'>): { readonly rooms?: readonly SweptPart[] } {
  const given = values.get('room');
  if (given === undefined) return {};
  const rooms = given.split(',').map((part) => {
    const found = SWEPT_PARTS.find((each) => each === part);
    if (!found) throw new UsageError(`--room takes ${SWEPT_PARTS.join(', ')}, found ${quoted(part)}`);
    return found;
  });
  return { rooms: [...new Set(rooms)] };
}

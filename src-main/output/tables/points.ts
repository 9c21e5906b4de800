import { hardpoints, type LayoutDocument } from '../../../shared-math/layout/index.ts';
import { textCell } from './cells.ts';

/** Every hardpoint at ride height, mm in the car's frame: x forward, y left, z up. */
export function* pointsTable(document: LayoutDocument): Iterable<string> {
  yield 'point,name,carriedBy,x,y,z\n';
  for (const { id, name, carrier, at } of hardpoints(document))
    yield `${textCell(id)},${textCell(name)},${carrier},${at.join(',')}\n`;
}

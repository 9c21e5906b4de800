import {
  type LayoutDocument,
  resolveLayout,
  type ShaftDocument,
  withValue,
} from '../../../shared-math/layout/index.ts';
import { arrangementOf } from '../../../shared-math/linkage/index.ts';
import { checkMeetings, routeOf } from '../../../shared-math/shaft/index.ts';
import type { PartOf } from '../../../shared-math/shelf/index.ts';

/** A layout with a box from the shelf: ratio, sector travel, assistance, and the input's spline where a shaft is drawn. */
export function withShelfBox(document: LayoutDocument, part: PartOf<'box'>): LayoutDocument {
  const { ratio, sectorTravel, assist, input } = part;
  // The angle of input and sector shaft was the other box's.
  const { inputAngle: _, ...box } = document.steering.box;
  const taken = withValue(document, 'steering.box', {
    ...box,
    ratio,
    sectorTravel,
    assist,
  });
  if (!taken.shaft || !input) return taken;
  return {
    ...taken,
    shaft: { ...taken.shaft, box: { ...taken.shaft.box, fit: { kind: 'spline', ...input } } },
  };
}

/** What is to be looked at when a box is taken that was made for the other arrangement; empty where it was not. */
export function mountingNote(document: LayoutDocument, part: PartOf<'box'>): string {
  const drawn = arrangementOf(resolveLayout(document));
  return part.mounting === drawn
    ? ''
    : `${part.name} is made for ${part.mounting} steer; this layout is ${drawn} steer. Look at how it is mounted and which way it turns.`;
}

/** A shaft with a joint from the shelf, turned so that more of its ends go together with their mates. */
export function withShelfJoint(shaft: ShaftDocument, index: number, part: PartOf<'joint'>): ShaftDocument {
  const turned = ([columnSide, boxSide]: PartOf<'joint'>['ends']): ShaftDocument => ({
    ...shaft,
    joints: shaft.joints.map((joint, i) =>
      i === index
        ? {
            kind: part.joint,
            centre: joint.centre,
            ...(part.limit === undefined ? {} : { limit: part.limit }),
            columnSide,
            boxSide,
          }
        : joint,
    ),
  });
  const [one, two] = part.ends;
  const ways = [turned([one, two]), turned([two, one])] as const;
  const [asIs, round] = ways.map(
    (way) =>
      checkMeetings(way, routeOf(way), { unit: 'mm', fraction: 16 }).filter(
        ({ joint, status }) => joint === index && status !== 'mismatch',
      ).length,
  );
  return (round as number) > (asIs as number) ? ways[1] : ways[0];
}

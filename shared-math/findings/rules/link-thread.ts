import { type Layout, LOCATION_FACTS } from '../../layout/index.ts';
import {
  drawnLength,
  type EndMaking,
  endRoom,
  LINK_KEYS,
  type LinkKey,
  linkMaking,
  type ThreadedMaking,
  USUAL_SOURCE,
} from '../../links/index.ts';
import type { Finding, Rule } from '../finding.ts';

const NAMES: Readonly<Record<LinkKey, string>> = {
  dragLink: 'Drag link',
  tieRod: 'Tie rod',
  lateralBar: 'Lateral bar',
  rods: 'Rods',
};
const ENDS: Readonly<Record<EndMaking['name'], string>> = {
  pitman: 'pitman arm end',
  steeringArm: 'steering arm end',
  left: 'left end',
  right: 'right end',
  axle: 'axle end',
  frame: 'frame end',
};
const PARTS: Readonly<Record<EndMaking['name'], string>> = {
  pitman: 'steering.box.pitmanBall',
  steeringArm: 'steering.dragLinkBall',
  left: 'axle.left.tieRodBall',
  right: 'axle.right.tieRodBall',
  axle: 'lateral.axle',
  frame: 'lateral.frame',
};

/** The take-off in the middle of those that leave thread and room for the adjuster; undefined if none does. */
function rightTakeOff(
  { reach, threadLength, jamNut, adjuster }: ThreadedMaking,
  wanted: number,
): number | undefined {
  const least = reach.value - threadLength.value + jamNut.value + adjuster.value;
  const most = reach.value - wanted - adjuster.value;
  return least <= most ? (least + most) / 2 : undefined;
}

function judgeEnd(
  layout: Layout,
  key: LinkKey,
  end: ThreadedMaking,
  speak: Parameters<Rule['judge']>[1],
): Finding[] {
  const room = endRoom(end);
  if (room.short === '') return [];
  const { takeOff, thread } = end;
  const better = rightTakeOff(end, room.wanted);
  const lacks =
    room.short === 'jam-nut'
      ? `the jam nut lacks ${speak.length(-room.jamRoomLeast)} of thread`
      : `${speak.length(Math.max(0, room.engagedLeast), [room.wanted])} of thread stays in the tube${
          room.short === 'both' ? ` and the jam nut lacks ${speak.length(-room.jamRoomLeast)}` : ''
        }`;
  const by = better === undefined ? 0 : better - takeOff.value;
  return [
    {
      rule: 'link-thread',
      severity: 'attention',
      part: key === 'rods' ? LOCATION_FACTS[layout.location.kind].part : PARTS[end.name],
      sentence: `${NAMES[key]}, ${ENDS[end.name]}: ${lacks}${
        end.adjuster.value > 0 ? ` when it is set ${speak.length(end.adjuster.value)} from the middle` : ''
      }`,
      limit: `wanted ${speak.length(room.wanted, [room.engagedLeast])}, 1 1/2 diameters of ${speak.length(thread.value)}`,
      source: USUAL_SOURCE,
      advice:
        better === undefined
          ? 'Use an end with more thread, or leave less to adjust.'
          : `Cut the tube ${speak.length(Math.abs(by))} ${by > 0 ? 'shorter' : 'longer'} there, so that the end takes off ${speak.length(better)}.`,
      ...(better === undefined
        ? {}
        : {
            remedy: {
              kind: 'set' as const,
              path: `links.${key}.ends.${end.name}.takeOff`,
              value: Math.round(better * 1000) / 1000,
              words: `Let the ${ENDS[end.name]} take off ${speak.length(better)}`,
            },
          }),
    },
  ];
}

/** Thread and jam nut room at each end whose thread and take-off somebody gave. */
export const linkThread: Rule = {
  name: 'link-thread',
  measures: 'Thread in the tube and room for the jam nut at each link end of known making',
  judge({ layout }, speak): Finding[] {
    if (!layout.links) return [];
    return LINK_KEYS.flatMap((key) => {
      if (key !== 'rods' && drawnLength(layout, key) === undefined) return [];
      return linkMaking(layout, key).ends.flatMap((end) =>
        end.kind === 'threaded' && !end.takeOff.assumed && !end.thread.assumed
          ? judgeEnd(layout, key, end, speak)
          : [],
      );
    });
  },
};

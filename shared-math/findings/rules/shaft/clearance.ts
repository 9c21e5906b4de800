import { capitalised } from '../../../capitalised.ts';
import type { Point } from '../../../geometry/points.ts';
import { routeObstacles, segmentToObstacle } from '../../../shaft/index.ts';
import { ALL_BUT_TOUCHES, type Finding, type Rule } from '../../finding.ts';
import { type JudgedShaft, jointPart, judgedShaft } from './judged.ts';

/** mm. Half a usual shaft, and half the size of a usual joint's body: common practice. */
const TUBE = 9.525;
const JOINT = 22.225;

/** A stretch of the shaft or a joint: what it is called, the joint that it belongs to, its middle line and its radius. */
interface Stretch {
  readonly name: string;
  readonly joint: number;
  readonly from: Point;
  readonly to: Point;
  readonly radius: number;
}

function stretchesOf({ shaft }: JudgedShaft): Stretch[] {
  const centres = shaft.joints.map(({ centre }) => centre);
  const last = centres.length - 1;
  const end = (part: 'column' | 'box') => (shaft[part].fit?.diameter ?? 2 * TUBE) / 2;
  return [
    {
      name: 'the column’s end',
      joint: 0,
      from: shaft.column.end,
      to: centres[0] as Point,
      radius: end('column'),
    },
    ...shaft.shafts.map(({ stock }, i) => ({
      name: `steering shaft ${i + 1}`,
      joint: i,
      from: centres[i] as Point,
      to: centres[i + 1] as Point,
      radius: (stock?.diameter ?? 2 * TUBE) / 2,
    })),
    {
      name: 'the box’s input',
      joint: last,
      from: centres[last] as Point,
      to: shaft.box.end,
      radius: end('box'),
    },
    ...centres.map((centre, i) => ({
      name: `joint ${i + 1} of the steering shaft`,
      joint: i,
      from: centre,
      to: centre,
      radius: JOINT,
    })),
  ];
}

/** "Engine" as it stands within a sentence; "V8" as it is. */
const within = (name: string) =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
/** How near the steering shaft comes to rails, engine, headers and whatever else the frame carries. */
export const shaftClearance: Rule = {
  name: 'shaft-clearance',
  measures: 'Least distance of the steering shaft from rails and obstacles',
  judge(analysis, speak): Finding[] {
    const judged = judgedShaft(analysis, speak);
    if (!judged) return [];
    const { value, source } = speak.limit('clearanceMoving');
    const stretches = stretchesOf(judged);
    const near = routeObstacles(analysis.layout).flatMap((obstacle) => {
      let worst: { readonly stretch: Stretch; readonly distance: number } | undefined;
      const wanted = value + (obstacle.extra ?? 0);
      for (const stretch of stretches) {
        const distance = segmentToObstacle(obstacle, stretch.from, stretch.to) - stretch.radius;
        if (distance < (worst?.distance ?? wanted)) worst = { stretch, distance };
      }
      return worst ? [{ ...worst, wanted, obstacle }] : [];
    });
    // A rail is several stretches under one name: the nearest of them is reported.
    const nearest = near
      .sort((a, b) => a.distance - b.distance)
      .filter(
        ({ obstacle }, i, all) => all.findIndex((other) => other.obstacle.name === obstacle.name) === i,
      );
    if (nearest.length === 0)
      return [
        {
          rule: 'shaft-clearance',
          severity: 'info',
          part: jointPart(0),
          sentence: 'The steering shaft keeps clear of rails and of what is in the way',
          limit: `limit ${speak.setLength(value)}`,
          source,
          advice: '',
        },
      ];
    return nearest.map(({ stretch, distance, wanted, obstacle }): Finding => {
      const what = capitalised(stretch.name);
      const words = speak.length(distance, [wanted]);
      const near = distance < ALL_BUT_TOUCHES ? 'all but touches' : `comes within ${words} of`;
      const how = distance <= 0 ? 'hits' : near;
      return {
        rule: 'shaft-clearance',
        severity: distance <= 0 ? 'stop' : 'attention',
        part: jointPart(stretch.joint),
        sentence: `${what} ${how} the ${within(obstacle.name)}`,
        limit: `limit ${speak.setLength(wanted)}${wanted > value ? ', with more room beside an exhaust' : ''}`,
        source,
        advice: 'Route the shaft around it with its joints, or move one of the two.',
      };
    });
  },
};

import type { ShaftDocument } from '../../../layout/index.ts';
import { checkRoute, supportsFor } from '../../../shaft/index.ts';
import type { Finding, Rule } from '../../finding.ts';
import { jointPart, judgedShaft, PRACTICE, piecePart } from './judged.ts';

const PUT_BEARING = 'Put a support bearing there';

const counted = (count: number) => ['none', 'one', 'two', 'three', 'four'][count] ?? String(count);
const bearings = (count: number) => `${counted(count)} support ${count === 1 ? 'bearing' : 'bearings'}`;

/** "Put a support bearing on shaft 2, beside joint 2": each by the shaft that it holds and the joint that it is nearer to. */
function putWords(supports: ShaftDocument['supports']): string {
  if (supports.length === 0) return 'Put a support bearing on the shaft';
  const places = supports.map(({ shaft, at }) => {
    const where = at === 0.5 ? 'in its middle' : `beside joint ${at < 0.5 ? shaft + 1 : shaft + 2}`;
    return `on shaft ${shaft + 1}, ${where}`;
  });
  return `Put ${supports.length === 1 ? 'a support bearing' : 'support bearings'} ${places.join(', and ')}`;
}

/** Support bearings: three or more joints, or a double one, leave a shaft that nothing holds. */
export const shaftSupport: Rule = {
  name: 'shaft-support',
  measures: 'Support bearings called for by three or more joints or a double one',
  judge(analysis, speak): Finding[] {
    const judged = judgedShaft(analysis, speak);
    if (!judged) return [];
    const { shaft, route } = judged;
    const { because, needed, placed, byColumnBearing } = checkRoute(shaft, route).support;
    if (!because) return [];
    const why =
      because === 'double-joint'
        ? 'A double joint does not hold its shaft'
        : 'Three or more joints leave a shaft loose';
    const missing = placed < needed;
    const held = new Set(shaft.supports.map((support) => support.shaft));
    const more = supportsFor(shaft, route)
      .filter((support) => !held.has(support.shaft))
      .slice(0, needed - placed);
    const sentenceOf = byColumnBearing
      ? `${why}: the column’s own bearing has to stand close to it`
      : `${why}: ${bearings(needed)} called for, ${counted(placed)} there`;
    return [
      {
        rule: 'shaft-support',
        severity: missing ? 'attention' : 'info',
        part: jointPart(Math.min(1, shaft.joints.length - 1)),
        sentence: sentenceOf,
        limit: '',
        source: PRACTICE,
        advice: missing ? `${putWords(more)}.` : '',
        ...(missing && more.length > 0
          ? {
              remedy: {
                kind: 'set' as const,
                path: 'shaft.supports',
                value: [...shaft.supports, ...more],
                words: PUT_BEARING,
              },
            }
          : {}),
      },
    ];
  },
};

/** How long a shaft runs without a bearing. */
export const shaftSpan: Rule = {
  name: 'shaft-span',
  measures: 'Longest stretch of the steering shaft between joint and support',
  judge(analysis, speak): Finding[] {
    const judged = judgedShaft(analysis, speak);
    if (!judged) return [];
    const { shaft, route } = judged;
    const { value, source } = speak.limit('shaftSpan');
    return checkRoute(shaft, route, value).longSpans.map(({ shaft: index, length }): Finding => {
      const whole = route.lengths[index] as number;
      const at = shaft.supports.filter((support) => support.shaft === index).map((support) => support.at);
      const stops = [0, ...at.sort((a, b) => a - b), 1];
      const gaps = stops.slice(1).map((stop, i) => stop - (stops[i] as number));
      const widest = gaps.indexOf(Math.max(...gaps));
      const middle = (stops[widest] as number) + (gaps[widest] as number) / 2;
      const parts = Math.ceil(length / value);
      return {
        rule: 'shaft-span',
        severity: 'attention',
        part: piecePart(index),
        sentence: `Shaft ${index + 1} runs ${speak.length(length, [value, whole])} without a bearing${at.length > 0 ? ` of its ${speak.length(whole, [length])}` : ''}`,
        limit: `limit ${speak.setLength(value)}`,
        source,
        advice:
          parts <= 2
            ? 'Put a support bearing in the middle of that stretch.'
            : `Put ${bearings(parts - 1)} along that stretch, evenly.`,
        remedy: {
          kind: 'set',
          path: 'shaft.supports',
          value: [
            ...shaft.supports,
            ...(parts <= 2
              ? [{ shaft: index, at: middle }]
              : Array.from({ length: parts - 1 }, (_, i) => ({
                  shaft: index,
                  at: (stops[widest] as number) + ((i + 1) / parts) * (gaps[widest] as number),
                }))),
          ],
          words: PUT_BEARING,
        },
      };
    });
  },
};

import { type JudgedBraking, judgeBraking, windUpCentre } from '../../brake/index.ts';
import type { Point } from '../../geometry/points.ts';
import type { Layout } from '../../layout/index.ts';
import { prepareFrontEnd } from '../../linkage/index.ts';
import { goldenSection } from '../../solve/golden-section.ts';
import { toRadians } from '../../units/index.ts';
import { type Finding, moveWords, type Rule } from '../finding.ts';
import { steerWay } from '../steer-way.ts';
import { assumedWords, hardWords } from './caster-braked.ts';

/** mm about the height of the wind-up's centre within which the best height of the ball is looked for. */
const ABOUT = 60;

const withArmBall = (layout: Layout, at: Point): Layout => ({
  ...layout,
  steering: { ...layout.steering, dragLinkBall: at as unknown as Layout['steering']['dragLinkBall'] },
});

/** |brake steer| with the drag link's ball on the steering arm there, rad; infinite where that cannot be posed. */
function steerWithBall(layout: Layout, at: Point): number {
  const judged = judgeBraking(prepareFrontEnd(withArmBall(layout, at)));
  return judged ? Math.abs(judged.hard.brakeSteer) : Number.POSITIVE_INFINITY;
}

/** The height of the steering-arm ball, near that of the wind-up's centre, at which braking steers least; undefined where it is no better. */
function betterBall(layout: Layout, { hard }: JudgedBraking): { to: Point; steer: number } | undefined {
  const { dragLinkBall: ball, dragLinkTo } = layout.steering;
  const centre = windUpCentre(layout, dragLinkTo)[2];
  const at = (z: number): Point => [ball[0], ball[1], z];
  const { low, high } = goldenSection(
    (z) => steerWithBall(layout, at(z)),
    centre - ABOUT,
    centre + ABOUT,
    0.05,
  );
  const to = at((low + high) / 2);
  const steer = steerWithBall(layout, to);
  return steer < Math.abs(hard.brakeSteer) / 2 ? { to, steer } : undefined;
}

/** What the wind-up of the axle does through the drag link, the handwheel held. */
export const brakeSteer: Rule = {
  name: 'brake-steer',
  measures: 'Steer of the wheels by itself under braking, the handwheel held',
  judge({ braking, layout, arrangement }, speak): Finding[] {
    if (!braking || braking.car.by === 'links') return [];
    const { value, source } = speak.limit('brakeSteer');
    const steer = braking.hard.brakeSteer;
    const size = Math.abs(steer);
    const over = size > toRadians(value);
    const better = over && arrangement === 'side' ? betterBall(layout, braking) : undefined;
    const held = layout.location.kind === 'parallel-leaf' ? 'the spring seat' : 'the axle';
    return [
      {
        rule: 'brake-steer',
        severity: over ? 'attention' : 'info',
        part: 'steering.dragLinkBall',
        sentence: `Braking ${hardWords(braking, speak)} steers the wheels ${[speak.angle(size, 2, [toRadians(value)]), steerWay(steer)].filter(Boolean).join(' ')} by itself${assumedWords(braking, speak)}`,
        limit: `limit ${speak.figure(value)}°`,
        source,
        advice: !over
          ? ''
          : better
            ? `${moveWords('steering arm ball', layout.steering.dragLinkBall, better.to, speak.length)}, near the height of ${held}: ${speak.angle(better.steer, 2)} is left`
            : 'Fit a radius rod each side, which ends the wind-up and the steer with it; or stiffer springs, which lessen both.',
        ...(better ? { remedy: { kind: 'move' as const, id: 'steering.dragLinkBall', to: better.to } } : {}),
      },
    ];
  },
};

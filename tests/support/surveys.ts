import { doubtOf, type SurveyRow, surveyedPoints } from '../../shared-math/adjust/index.ts';
import { unknownsOf } from '../../shared-math/adjust/unknowns.ts';
import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { seededRandom } from '../../shared-math/solve/random.ts';
import { type PeerTask, type Points, plainValue, SECTOR_AXIS } from './survey-peer.ts';

export function pointsOf(document: LayoutDocument): Points {
  return {
    ...Object.fromEntries(surveyedPoints(document).map(({ id, at }) => [id, at])),
    // A direction among the points: an arm is measured square to it.
    [SECTOR_AXIS]: document.steering.box.sectorAxis,
  };
}

/** Numbers of a normal distribution, mean 0, deviation 1, by Box and Muller. */
export function seededNormal(seed: number): () => number {
  const random = seededRandom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** What a careful person tapes of a car with hairpins and side steer: each thing once, and lengths that check them. */
export function sideSteerRows(): Omit<SurveyRow, 'value'>[] {
  const rows: Record<string, unknown>[] = [];
  const of = (kind: string, id: string) => rows.push({ kind, of: id });
  const between = (kind: string, from: string, to: string) => rows.push({ kind, from, to });
  for (const id of [
    'axle.left.kingpinTop',
    'axle.left.kingpinBottom',
    'axle.left.tieRodBall',
    'location.left.framePivot',
    'steering.dragLinkBall',
    'steering.box.pitmanBall',
    'steering.box.sectorCentre',
  ])
    for (const kind of ['back', 'out', 'up']) of(kind, id);
  of('up', 'axle.left.wheelCentre');
  of('out', 'axle.left.wheelCentre');
  between('straight', 'axle.left.kingpinTop', 'axle.right.kingpinTop');
  between('straight', 'axle.left.kingpinBottom', 'axle.right.kingpinBottom');
  between('straight', 'axle.left.tieRodBall', 'axle.right.tieRodBall');
  between('straight', 'location.left.framePivot', 'location.right.framePivot');
  between('straight', 'steering.dragLinkBall', 'steering.box.pitmanBall');
  between('straight', 'steering.box.pitmanBall', 'steering.box.sectorCentre');
  between('straight', 'axle.left.kingpinTop', 'location.left.framePivot');
  between('level', 'location.left.framePivot', 'steering.box.pitmanBall');
  between('plumb', 'location.left.framePivot', 'steering.dragLinkBall');
  between('behind', 'steering.dragLinkBall', 'steering.box.pitmanBall');
  between('across', 'location.left.framePivot', 'steering.box.pitmanBall');
  rows.push({ kind: 'arm', of: 'steering.dragLinkBall', side: 'left' });
  rows.push({ kind: 'arm', of: 'axle.left.tieRodBall', side: 'left' });
  rows.push({ kind: 'caster', side: 'left' }, { kind: 'inclination', side: 'left' });
  return rows.map((row, i) => ({ id: `r${i + 1}`, ...row })) as unknown as Omit<SurveyRow, 'value'>[];
}

/** The same with the other side and many lengths between points as well, so that most rows are checked by others. */
export function fullyCheckedRows(): Omit<SurveyRow, 'value'>[] {
  const ids = [
    'axle.left.kingpinTop',
    'axle.right.kingpinBottom',
    'axle.left.tieRodBall',
    'location.left.framePivot',
    'location.right.framePivot',
    'steering.dragLinkBall',
    'steering.box.pitmanBall',
    'steering.box.sectorCentre',
  ];
  const more = ids.flatMap((from, i) =>
    ids.slice(i + 1).map((to) => ({ id: `${from} to ${to}`, kind: 'straight', from, to })),
  );
  return [...sideSteerRows(), ...(more as unknown as Omit<SurveyRow, 'value'>[])];
}

/** Rows with the values that a car's true points give, and noise of their doubt times `noise()`. */
export function measured(
  rows: readonly Omit<SurveyRow, 'value'>[],
  truth: Points,
  drawn: Points,
  noise: () => number = () => 0,
): SurveyRow[] {
  return rows.map((row) => {
    const whole = { ...row, value: 1 } as SurveyRow;
    return { ...whole, value: plainValue(whole, truth, drawn) + noise() * doubtOf(whole) } as SurveyRow;
  });
}

/** The same task for the independent solver. */
export function peerTask(document: LayoutDocument, rows: readonly SurveyRow[]): PeerTask {
  const { unknowns, places } = unknownsOf(document);
  return {
    drawn: pointsOf(document),
    unknowns,
    mirrored: [...places].filter(([, { sign }]) => sign[1] < 0).map(([id]) => id),
    rows,
    doubts: rows.map(doubtOf),
  };
}

import { describe, expect, test } from 'vitest';
import type { Layout } from '../../../shared-math/layout/index.ts';
import { carOf } from '../../../shared-math/propose/car.ts';
import { ideasFor } from '../../../shared-math/propose/ideas.ts';
import { costWords, proposalName } from '../../../shared-math/propose/words.ts';
import { CARS_TO_STEER } from '../../support/cars-to-steer.ts';
import { INCHES } from '../../support/judged-car.ts';

const document = CARS_TO_STEER.find(({ name }) => name === 'Tight engine')?.document;
if (!document) throw new Error('no such car');
const car = carOf({ document, style: INCHES });
const idea = ideasFor(car).find(({ key }) => key === 'side through behind manual');
if (!idea) throw new Error('no such idea');

const NO_SHAFT = { kind: 'none', tried: [] } as const;

/** A layout of the idea with its sector shaft at a height: over x = -900 this car's rail runs level, from 395 to 485 mm. */
function sectorAt(z: number): Layout {
  const laid = idea?.lay(idea.starts()[0] as readonly number[]);
  if (!laid) throw new Error('no layout');
  const { box } = laid.steering;
  const up = z - box.sectorCentre[2];
  return {
    ...laid,
    steering: {
      ...laid.steering,
      box: {
        ...box,
        sectorCentre: [-900, box.sectorCentre[1], z],
        pitmanBall: [-900, box.pitmanBall[1], box.pitmanBall[2] + up],
      },
    },
  };
}

describe('how a sector shaft passes the rail', () => {
  test.each([
    ['under it', 340, undefined],
    ['through its lower edge', 400, 'The rail’s lower edge has to be cut out'],
    ['through it', 440, 'The rail has to be bored and sleeved'],
    ['through its upper edge', 480, 'The rail’s upper edge has to be cut out'],
    ['over it', 540, undefined],
  ])('%s, at %s mm', (where, z, cost) => {
    const layout = sectorAt(z);
    expect(proposalName(car, idea, layout)).toContain(
      `inside the left rail, its sector shaft ${where}, arm `,
    );
    const judged = { findings: [], stops: [], figures: undefined };
    const costs = costWords(car, idea, layout, judged, undefined, NO_SHAFT).join(' ');
    if (cost) expect(costs).toContain(cost);
    else expect(costs).not.toContain('The rail');
  });

  test('one that has to reach far out of its box is said to', () => {
    const layout = sectorAt(440);
    const { box } = layout.steering;
    const [x, y, z] = box.pitmanBall;
    // 22 mm from the middle of a usual box to its face: 180 - 22 = 158 mm, 6 1/4 in near enough.
    const far: Layout = {
      ...layout,
      steering: { ...layout.steering, box: { ...box, pitmanBall: [x, box.sectorCentre[1] + 180, z] } },
    };
    const near: Layout = {
      ...layout,
      steering: { ...layout.steering, box: { ...box, pitmanBall: [x, box.sectorCentre[1] + 90, z] } },
    };
    expect(y).toBeGreaterThan(box.sectorCentre[1]);
    const costs = (of: Layout) =>
      costWords(car, idea, of, { findings: [], stops: [], figures: undefined }, undefined, NO_SHAFT).join(
        ' ',
      );
    expect(costs(far)).toContain('The sector shaft has to reach 6 1/4 in out of the box');
    expect(costs(near)).not.toContain('has to reach');
  });
});

import { GRAVITY, type RideParameters, type Road } from '../../shared-math/ride/index.ts';

/**
 * The peer: the same front of a car over the same road, its eight equations of the first order written out lean and taken
 * on by the classical Runge-Kutta method of fourth order, without allocation. It knows no engine, no hand and no steering.
 */
export interface RidePeer {
  /** Frame's rise and roll, axle's rise and roll (m, rad), then their speeds. */
  readonly state: Float64Array;
  rest(): void;
  /** Takes it on by whole steps. */
  step(count: number): void;
}

export function prepareRidePeer(p: RideParameters, road: Road, speed: number, step: number): RidePeer {
  const inertia = (p.sprungInertia + p.sprungMass * (p.sprungHeight - p.rollCentre) ** 2) / 1e6;
  const axleInertia = p.axleInertia / 1e6;
  const [springArm, damperArm, tyreArm] = [p.springBase / 2000, p.damperBase / 2000, p.track / 2000];
  const spring = 1000 * p.springRate;
  const tyre = 1000 * p.tyreRate;
  const tyreDamping = 1000 * p.tyreDamping;
  const leaning = (p.sprungMass * GRAVITY * (p.sprungHeight - p.rollCentre)) / 1000;
  const weight = ((p.sprungMass + p.unsprungMass) * GRAVITY) / 2;
  const state = new Float64Array(8);
  const probe = new Float64Array(8);
  const slope = new Float64Array(8);
  const sum = new Float64Array(8);
  let time = 0;

  const stop = (x: number): number => {
    const over = x > p.bump ? x - p.bump : x < -p.rebound ? x + p.rebound : 0;
    return p.stopRate * over * (1 + Math.abs(over) / p.stopDepth);
  };

  const slopes = (at: number, x: Float64Array): void => {
    const [zf, rf, za, ra] = [x[0]!, x[1]!, x[2]!, x[3]!];
    const [vf, wf, va, wa] = [x[4]!, x[5]!, x[6]!, x[7]!];
    let [lift, turn, ground, groundTurn] = [0, (p.rollStiffness / 1000) * (ra - rf), 0, 0];
    for (let side = 1; side >= -1; side -= 2) {
      const compression = za - zf + side * springArm * (ra - rf);
      const force = spring * compression + stop(1000 * compression);
      const closing = va - vf + side * damperArm * (wa - wf);
      const damper = 1000 * (closing > 0 ? p.bumpDamping : p.reboundDamping) * closing;
      lift += force + damper;
      turn += side * (springArm * force + damperArm * damper);
      const heightAt = side > 0 ? road.leftAt : road.rightAt;
      const distance = speed * at;
      const stride = speed * step;
      let load = weight + tyre * (heightAt(distance) / 1000 - za - side * tyreArm * ra);
      if (load > 0)
        load +=
          tyreDamping *
          ((heightAt(distance + stride) - heightAt(distance - stride)) / 2000 / step -
            va -
            side * tyreArm * wa);
      load = Math.max(0, load) - weight;
      ground += load;
      groundTurn += side * tyreArm * load;
    }
    slope[0] = vf;
    slope[1] = wf;
    slope[2] = va;
    slope[3] = wa;
    slope[4] = lift / p.sprungMass;
    slope[5] = (turn + leaning * rf) / inertia;
    slope[6] = (ground - lift) / p.unsprungMass;
    slope[7] = (groundTurn - turn) / axleInertia;
  };

  return {
    state,
    rest() {
      state.fill(0);
      time = 0;
    },
    step(count) {
      for (let n = 0; n < count; n += 1) {
        slopes(time, state);
        for (let i = 0; i < 8; i += 1) {
          sum[i] = slope[i]!;
          probe[i] = state[i]! + (step / 2) * slope[i]!;
        }
        for (let half = 0; half < 2; half += 1) {
          slopes(time + step / 2, probe);
          for (let i = 0; i < 8; i += 1) {
            sum[i] = sum[i]! + 2 * slope[i]!;
            probe[i] = state[i]! + (half === 0 ? step / 2 : step) * slope[i]!;
          }
        }
        slopes(time + step, probe);
        for (let i = 0; i < 8; i += 1) state[i] = state[i]! + (step / 6) * (sum[i]! + slope[i]!);
        time += step;
      }
    },
  };
}

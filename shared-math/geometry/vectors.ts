import type { Point } from './points.ts';

// Small readonly vector functions for set-up code. Hot loops write their sums out instead of allocating points.

export function add(a: Point, b: Point): Point {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function subtract(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function scaled(a: Point, factor: number): Point {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

export function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** Right-handed cross product. */
export function cross(a: Point, b: Point): Point {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function norm(a: Point): number {
  return Math.hypot(a[0], a[1], a[2]);
}

/** The vector at length 1. The caller has refused vectors of no length. */
export function unit(a: Point): Point {
  return scaled(a, 1 / norm(a));
}

export function midpoint(a: Point, b: Point): Point {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
}

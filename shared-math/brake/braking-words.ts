/** What the figures of braking leave out, and what that would change. */
export const BRAKING_LEFT_OUT: readonly string[] = [
  'Friction between the leaves and the clamped length at the seat: they make a spring stiffer against winding up.',
  'The arch of the leaves: it takes about a third of the eyes’ height above the seat off the lever.',
  'The front’s dip: set it with the heave.',
  'Brakes that pull unequally, and what a tyre’s scrub then does to the handwheel.',
  'Rear brakes that do less than their grip allows: the front is then loaded less.',
];

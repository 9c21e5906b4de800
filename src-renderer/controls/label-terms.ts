import type { TermId } from '../../shared-math/words/terms/index.ts';

/**
 * Which word explains a label, wherever that label stands: fields, choices, titles and figures look here, so that all of
 * them are dotted alike. A label that goes on after a comma ("Camber, left wheel") is explained as what stands before it.
 */
const LABEL_TERMS = {
  // The car
  Wheelbase: 'wheelbase',
  'Tyre radius': 'tyre-radius',
  Beam: 'beam',
  'Located by': 'located-by',
  'Centred by': 'centred-by',
  'Rocker turns on': 'watts-linkage',
  Camber: 'camber',
  'Toe-in': 'toe',
  'Box ratio': 'ratio',
  'Pitman arm swings': 'side-steer',
  'Drag link goes to': 'drag-link',
  'Sector travel each way': 'sector-shaft',
  'Input to sector shaft': 'sector-shaft',
  Assistance: 'assistance',
  'Stops at the axle': 'stops',
  Bump: 'heave',
  Droop: 'heave',
  'Roll each way': 'roll',
  // Known lengths and kingpins
  'Pitman arm': 'pitman-arm',
  'Drag link': 'drag-link',
  'Steering arm': 'steering-arm',
  'Tie rod': 'tie-rod',
  Kingpins: 'kingpin',
  Kingpin: 'kingpin',
  Caster: 'caster',
  'Kingpin inclination': 'kingpin-inclination',
  'Scrub radius': 'scrub',
  'Mechanical trail': 'trail',
  Stud: 'stud',
  // The pose
  Heave: 'heave',
  Roll: 'roll',
  'Bind in the links': 'bind',
  'Beam twists': 'beam',
  'Springs wind up': 'wind-up',
  // Travel, braking and comparison
  'Worst bump steer': 'bump-steer',
  'Worst steer in roll': 'roll-steer',
  'One wheel over a bump': 'one-wheel',
  'Bump steer slope': 'bump-steer-slope',
  'Roll steer': 'roll-steer',
  'At the aim point': 'aim-point',
  'Aim point': 'aim-point',
  'Axle winds up': 'wind-up',
  'Steers by itself': 'brake-steer',
  'Wind-up stiffness': 'wind-up',
  'Total toe-in': 'toe',
  // The turn
  'Turn ends at': 'stops',
  'Inner and outer wheel': 'lock',
  'Circle between kerbs': 'turning-circle',
  'Circle between walls': 'turning-circle',
  'Drag link to pitman arm': 'transmission-angle',
  'Drag link to steering arm': 'transmission-angle',
  'Returns by itself': 'self-return',
  'Parking effort': 'parking-effort',
  'Lock to lock': 'lock-to-lock',
  'Overall ratio': 'ratio',
  // The shaft
  'swing over a turn': 'swing',
  'Best clocked': 'clock',
  'Unevenness at the wheels': 'swing',
  Clock: 'clock',
  Support: 'support-bearing',
  'True angle': 'joint-angle',
  'Seen in the views': 'apparent-angle',
  'Over the teeth': 'spline',
  'Teeth counted': 'spline',
  // The road
  'Spring rate from': 'spring-rate',
  'Ride frequency': 'ride-frequency',
  'Damping ratio': 'ride-frequency',
  'Wheel hop': 'ride-frequency',
  'Handwheel kick': 'kick',
  'Axle, wheels, brakes': 'sprung',
} as const satisfies Readonly<Record<string, TermId>>;

export const EXPLAINED_LABELS = Object.keys(LABEL_TERMS);

/** The word that explains a label; undefined if it needs none. */
export function termOfLabel(label: string): TermId | undefined {
  const known: Readonly<Record<string, TermId>> = LABEL_TERMS;
  if (Object.hasOwn(known, label)) return known[label];
  const before = label.split(',')[0] as string;
  return Object.hasOwn(known, before) ? known[before] : undefined;
}

import type { Part, Role } from '../../../shared-math/drawing/index.ts';

/** The layers that a drawing has its parts on, named after what is on them. */
export type PartLayer =
  | 'axle'
  | 'wheels'
  | 'steering'
  | 'location'
  | 'rails'
  | 'obstacles'
  | 'shaft'
  | 'ground';

const LAYERS_OF: Record<Role, PartLayer> = {
  ground: 'ground',
  tyre: 'wheels',
  frame: 'rails',
  axle: 'axle',
  link: 'location',
  spring: 'location',
  box: 'steering',
  steering: 'steering',
  obstacle: 'obstacles',
};

/** The layer of a part, the same in every kind of file. */
export const partLayer = ({ id, role }: Part): PartLayer =>
  id.startsWith('shaft-') ? 'shaft' : LAYERS_OF[role];

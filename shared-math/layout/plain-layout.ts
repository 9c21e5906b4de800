import type { LayoutDocument } from './schema.ts';
import { LAYOUT_VERSION } from './version.ts';

/**
 * A plain car to begin from when none of the demonstrations is near: an I-beam on hairpins with a lateral bar,
 * side steer. Invented, of middling size, and laid out so that every link can move.
 */
export const PLAIN_LAYOUT: LayoutDocument = {
  format: 'toeboard-layout',
  version: LAYOUT_VERSION,
  name: 'New layout',
  notes: '',
  car: { wheelbase: 2640, frontAxleLoad: 4900, tyreRadius: 330, tyreWidth: 150, handwheelRadius: 190 },
  axle: {
    beam: 'i-beam',
    left: {
      kingpinTop: [-8, 620, 385],
      kingpinBottom: [8, 640, 275],
      wheelCentre: [0, 710, 330],
      camber: 1,
      toeIn: 0.1,
      tieRodBall: [-135, 595, 265],
    },
    right: 'mirror',
  },
  location: { kind: 'hairpins', left: { framePivot: [-820, 360, 330] }, right: 'mirror' },
  lateral: { kind: 'bar', axle: [-60, -480, 300], frame: [-60, 400, 320] },
  steering: {
    dragLinkTo: 'left',
    dragLinkBall: [-10, 540, 345],
    box: {
      sectorCentre: [-810, 430, 490],
      sectorAxis: [0, -1, 0],
      pitmanBall: [-810, 480, 332],
      ratio: 16,
      sectorTravel: 35,
      assist: 'manual',
    },
  },
  travel: { bump: 75, rebound: 75, roll: 3 },
  rails: [],
  obstacles: [],
  photos: [],
  shaft: null,
  ride: null,
};

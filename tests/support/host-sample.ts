import { LAYOUT_VERSION, type LayoutDocument, withValue } from '../../shared-math/layout/index.ts';

/** A whole layout document, every optional part spelled out, so that what comes back can be compared with it. */
export function sampleLayout(name = 'Arm down', pitmanHeight = 346): LayoutDocument {
  return {
    format: 'toeboard-layout',
    version: LAYOUT_VERSION,
    name,
    notes: 'Box at the cowl; 3 1/4" below the rail – drawn from photos.',
    car: {
      wheelbase: 2640,
      frontAxleLoad: 4900,
      tyreRadius: 330,
      tyreWidth: 150,
      handwheelRadius: 190,
      driverSide: 'left',
    },
    axle: {
      beam: 'i-beam',
      left: {
        kingpinTop: [-7, 631, 395],
        kingpinBottom: [7, 649, 265],
        wheelCentre: [0, 710, 330],
        camber: 1,
        toeIn: 0.1,
        tieRodBall: [-150, 606, 292],
      },
      right: 'mirror',
    },
    location: { kind: 'hairpins', left: { framePivot: [-890, 415, 335] }, right: 'mirror' },
    lateral: { kind: 'spring', height: 480 },
    steering: {
      dragLinkTo: 'left',
      dragLinkBall: [0, 484, 395],
      box: {
        sectorCentre: [-872, 500, 486],
        sectorAxis: [0, -1, 0],
        pitmanBall: [-872, 500, pitmanHeight],
        ratio: 16,
        sectorTravel: 35,
        inputAngle: 90,
        assist: 'manual',
      },
    },
    travel: { bump: 75, rebound: 75, roll: 3 },
    origins: { 'axle.left.kingpinTop': 'tape', 'steering.box.pitmanBall': 'plan' },
    rails: [],
    obstacles: [],
    photos: [],
    shaft: null,
    ride: null,
  };
}

/** Well-formed, but the drag link has no length: refused for its geometry, not for its form. */
export function impossibleLayout(): LayoutDocument {
  const layout = sampleLayout('No drag link');
  return withValue(layout, 'steering.dragLinkBall', layout.steering.box.pitmanBall);
}

import type { Lateral } from '../../layout/index.ts';

type AddPlace = (id: string, name: string, noun: string, of: string, options?: { onFrame?: boolean }) => void;
type AddStraight = (id: string, name: string, how: string, from: string, to: string) => void;

const BAR_LENGTH = 'From bolt centre to bolt centre along the bar.';

/** What a person measures of what holds the axle sideways, by kind; nothing of a spring on two shackles, which has no point. */
export function addLateral(lateral: Lateral, place: AddPlace, straight: AddStraight): void {
  switch (lateral.kind) {
    case 'bar':
      place('bar-axle', 'Bar, axle end', "the bar's bolt on the axle", 'lateral.axle');
      place('bar-frame', 'Bar, frame end', "the bar's bolt on the frame", 'lateral.frame', { onFrame: true });
      straight('bar-length', 'Lateral bar, length', BAR_LENGTH, 'lateral.axle', 'lateral.frame');
      break;
    case 'spring':
      break;
    case 'fixed-spring':
      place('spring-eye', 'Spring, fixed eye', "the bolt of the spring's fixed eye", 'lateral.eye');
      place(
        'spring-clamp',
        "Spring clamp, fixed eye's side",
        "the main leaf's edge at the clamp's end, on the fixed eye's side",
        'lateral.clamp',
        { onFrame: true },
      );
      straight(
        'spring-half',
        'Fixed eye to clamp, straight',
        "Straight from the fixed eye's centre to where the main leaf leaves the clamp.",
        'lateral.eye',
        'lateral.clamp',
      );
      break;
    case 'watt': {
      const onFrame = lateral.rockerOn === 'frame';
      place('rocker-bolt', 'Rocker bolt', "the rocker's bolt", 'lateral.pivot', { onFrame });
      for (const [bar, name] of [
        ['upper', 'Upper Watt bar'],
        ['lower', 'Lower Watt bar'],
      ] as const) {
        const [near, far] = [`lateral.${bar}.rocker`, `lateral.${bar}.end`];
        place(`watt-${bar}-rocker`, `${name}, rocker end`, `the ${bar} bar's bolt on the rocker`, near);
        place(`watt-${bar}-end`, `${name}, far end`, `the ${bar} bar's bolt at its far end`, far, {
          onFrame: !onFrame,
        });
        straight(`watt-${bar}-length`, `${name}, length`, BAR_LENGTH, near, far);
        straight(
          `watt-${bar}-arm`,
          `Rocker, bolt to ${bar} bar`,
          "From the rocker's bolt to the bar's bolt on it, centre to centre.",
          'lateral.pivot',
          near,
        );
      }
      break;
    }
    default:
      lateral satisfies never;
  }
}

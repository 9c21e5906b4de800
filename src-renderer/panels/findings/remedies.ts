import type { Finding, Remedy } from '../../../shared-math/findings/index.ts';
import { type LayoutDocument, moveHardpoint, withValue } from '../../../shared-math/layout/index.ts';

/** The document with a remedy taken. Not validated: the edit that takes it does that. */
export function remedied(document: LayoutDocument, remedy: Remedy): LayoutDocument {
  return remedy.kind === 'move'
    ? moveHardpoint(document, remedy.id, remedy.to)
    : withValue(document, remedy.path, remedy.value);
}

/** What values that a remedy sets are, in the words of somebody who does it; a path that is missing here has none. */
const SETTINGS: Record<string, (value: unknown) => string> = {
  'steering.stopAngle': (degrees) => `Set stops at ${String(degrees)}° of either wheel`,
  'steering.box.sectorAxis': () => 'Take a box that turns the other way',
  'car.tyreRadius': () => 'Set the tyre radius to the wheel centre’s height',
  'car.driverSide': (side) => `Say that the driver sits on the ${String(side)}`,
  shaft: () => 'Turn the input to the box’s own angle',
  'shaft.supports': () => 'Put a support bearing there',
  'shaft.shafts': () => 'Set the best clocking',
  'axle.beam': (beam) => (beam === 'tube' ? 'Use a tube' : 'Use an I-beam'),
};

/**
 * The words on the button that takes a finding's remedy. A move is said by the advice itself; of a value that is set,
 * the advice may name several ways out and the button is only one of them.
 */
export function remedyWords({ remedy, advice }: Finding): string {
  if (!remedy) return '';
  if (remedy.kind === 'set' && /^shaft\.joints\.\d+\.kind$/.test(remedy.path)) return 'Take a double joint';
  if (remedy.kind === 'set') return SETTINGS[remedy.path]?.(remedy.value) ?? advice.replace(/\.$/, '');
  return advice.replace(/\.$/, '');
}

/** The step in the history: what was done, without what it promised. */
export function remedyLabel(finding: Finding): string {
  return remedyWords(finding).replace(/: .*$/, '');
}

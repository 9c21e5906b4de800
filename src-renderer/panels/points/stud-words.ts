import type { Stud, StudWay } from './studs.ts';

export const STUD_WORDS: Record<StudWay, string> = {
  upright: 'upright',
  'fore and aft': 'fore and aft',
  across: 'across the car',
  kingpin: 'along the kingpin',
  sector: 'along the sector',
};

/** Why a stud usually points as it does, by where it stands. */
export function usualStudWords({ joint, usual }: Stud): string {
  if (joint.studCarrier === 'pitman') return STUD_WORDS.sector;
  if (joint.studCarrier.startsWith('spindle')) return STUD_WORDS.kingpin;
  const [x, y, z] = usual.map(Math.abs) as [number, number, number];
  return STUD_WORDS[z > x && z > y ? 'upright' : x > y ? 'fore and aft' : 'across'];
}

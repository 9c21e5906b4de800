import type { View } from '../../../../shared-math/drawing/index.ts';
import type { Photo } from '../../../../shared-math/layout/index.ts';
import type { Advice, Advised, Help } from '../../../../shared-math/trace/index.ts';
import { planeOf, stanceOf } from '../../../../shared-math/trace/index.ts';
import { formatDegrees, formatSpan, MM_PER_INCH, toDegrees } from '../../../../shared-math/units/index.ts';

/** mm. A doubt beyond this is one of depth: nothing but the drawing says how deep the points stand. */
const DEPTH_UNKNOWN = 100;
/** rad. Nobody stands more nearly square than this by eye. */
const SQUARE = 0.07;

const FROM: Record<View, string> = { side: 'from the side', top: 'from above', front: 'from ahead' };

interface Asked {
  readonly photos: readonly Photo[];
  readonly unit: 'in' | 'mm';
  name(point: string): string;
}

const lower = (name: string) => name.charAt(0).toLowerCase() + name.slice(1);
const both = (photos: readonly Photo[], of: readonly number[]) =>
  of.map((at) => (photos[at] ? `“${photos[at].name}”` : 'the one to be taken')).join(' and ');

/** How far off square the camera of a photo stood, where that is worth a word. */
function stoodWords(photo: Photo | undefined): string {
  const plane = photo && planeOf(photo);
  const stance = photo && plane?.ok ? stanceOf(photo, plane.value) : undefined;
  if (!stance || stance.offSquare < SQUARE) return '';
  return `You stood ${formatDegrees(toDegrees(stance.offSquare), 0)} off square. `;
}

/** What to do, as the beginning of a sentence. */
function helpWords(help: Help, { photos, unit, name }: Asked): string {
  if (help.kind === 'beside') {
    const like = photos[help.photo];
    const side = help.right > 0 ? 'right' : 'left';
    const aside = `${formatSpan(Math.abs(help.right), unit)} to the ${side}`;
    // The one that it stands beside may still have to be taken itself.
    if (!like) return `Take another beside that one, ${aside}, as far off and as high`;
    return `${stoodWords(like)}Take one more ${FROM[like.view]}, ${aside} of where you stood, as far off and as high`;
  }
  if (help.kind === 'view') {
    const stand = help.view === 'top' ? 'straight down, camera' : 'square on, from';
    const high = help.view === 'top' ? ' up' : '';
    return `Take one ${FROM[help.view]}, ${stand} ${formatSpan(help.distance, unit)}${high}`;
  }
  if (help.kind === 'length')
    return `Tape straight from the ${lower(name(help.from))} to the ${lower(name(help.to))} and type it under the lengths by tape`;
  const of = both(photos, help.photos);
  if (help.kind === 'distance') return `Tape how far the camera stood from the plane of ${of}`;
  if (help.kind === 'plane') return `Tape where the plane of ${of} stands`;
  return `Click a long straight edge near a border of ${of}, under Lens`;
}

/** A doubt, never rounded down: nobody reads more than a hundredth of an inch, or a tenth of a millimetre, of it. */
function doubtWords(mm: number, unit: 'in' | 'mm'): string {
  const [value, decimals] = unit === 'in' ? [mm / MM_PER_INCH, 2] : [mm, 1];
  const step = 10 ** decimals;
  return `± ${(Math.ceil(value * step - 1e-9) / step).toFixed(decimals)} ${unit}`;
}

/** What it leaves, the first thing of what is in doubt now. */
function leavesWords({ now, left }: Advice, first: boolean, unit: 'in' | 'mm'): string {
  const then = `Points are then known to ${doubtWords(left, unit)} on average`;
  if (!first) return `${then}.`;
  if (now > DEPTH_UNKNOWN) return `${then}; so far nothing says how deep they stand.`;
  return `${then}, not just ${doubtWords(now, unit)}.`;
}

/** What would help most, one sentence or two each, in the order in which to do it. */
export function adviceWords({ now, steps }: Advised, asked: Asked): string[] {
  if (steps.length === 0)
    return [
      `With every point clicked on these photos they are known to about ${doubtWords(now, asked.unit)}. Nothing that was tried, one photo or one length more, would take a fifth off that.`,
    ];
  return steps.map((step, i) => `${helpWords(step.help, asked)}. ${leavesWords(step, i === 0, asked.unit)}`);
}

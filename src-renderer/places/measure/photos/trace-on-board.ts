import { type Contribution, piece } from '../../../board/contributor.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import AsSeenSwitch from './AsSeenSwitch.svelte';
import type { AsSeen } from './as-seen.svelte.ts';
import PhotosUnder from './PhotosUnder.svelte';
import TraceOver from './TraceOver.svelte';
import type { Trace } from './trace.svelte.ts';

/** The photos under the drawing, and what is traced over it. */
export const traceOnBoard = (openLayout: OpenLayout, trace: Trace, asSeen: AsSeen) => (): Contribution => ({
  id: 'trace',
  traced: () => trace.photos.some(({ shown }) => shown),
  below: piece(PhotosUnder, { trace }),
  button: piece(AsSeenSwitch, { asSeen }),
  above: piece(TraceOver, { openLayout, trace }),
});

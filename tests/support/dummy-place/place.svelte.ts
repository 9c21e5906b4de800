import { latePiece } from '../../../src-renderer/controls/late.svelte.ts';
import type { Place } from '../../../src-renderer/places/place.ts';
import { dummyStrip } from './dummy-strip.ts';

/** A place that hands in one of everything; it is put into a page of the tests by one line of the list of places. */
export function dummyPlace(): Place {
  const done: string[] = $state([]);
  return {
    id: 'dummy',
    name: 'Dummy',
    column: latePiece(() => import('./DummyPage.svelte'), { done }),
    strip: { value: () => dummyStrip((to) => done.push(`moved to ${to}`)) },
    contributors: [
      () => ({
        id: 'dummy',
        overlay: ({ onBoard }) => {
          const [x, y] = onBoard('side', [0, 0]);
          return { texts: [{ x, y, text: 'Dummy on the board', ink: 'ink', strong: false, align: 'left' }] };
        },
      }),
    ],
    actions: [
      {
        id: 'dummy',
        name: 'Try the dummy',
        strokes: [{ key: 'x' }],
        enabled: () => true,
        run: () => void done.push('action'),
      },
    ],
    keyUses: [({ key }) => key === 'j' && done.push('key') > 0],
  };
}

import { GROUND_KEY, keepForStart } from './frame.ts';

/** What the page stands on: paper by day, a dark warm ground by night, or as the computer is set. */
export type GroundChoice = 'as-computer' | 'day' | 'night';

class Ground {
  /** As the page was laid before its script ran; without a page, as in a test of sums, by day. */
  #night = $state(globalThis.document?.documentElement.dataset['ground'] === 'night');

  /** Whether the dark ground lies under the page now. What reads colours off the page follows this. */
  get night(): boolean {
    return this.#night;
  }

  lay(night: boolean): void {
    if (night) document.documentElement.dataset['ground'] = 'night';
    else delete document.documentElement.dataset['ground'];
    this.#night = night;
    keepForStart(GROUND_KEY, night ? 'night' : 'day');
  }
}

export const pageGround = new Ground();

/** Keeps the page on the ground that was chosen. Returns how to stop following the computer. */
export function followGround(choice: GroundChoice): () => void {
  const dark = window.matchMedia('(prefers-color-scheme: dark)');
  const lay = () => pageGround.lay(choice === 'night' || (choice === 'as-computer' && dark.matches));
  lay();
  dark.addEventListener('change', lay);
  return () => dark.removeEventListener('change', lay);
}

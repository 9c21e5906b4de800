import type { NewPart } from '../../../shared-math/propose/index.ts';

/** "12,400 arrangements tried." */
export function triedWords(tried: number): string {
  if (tried === 0) return '';
  return `${tried.toLocaleString('en-US')} ${tried === 1 ? 'arrangement' : 'arrangements'} tried.`;
}

/** How the search stands, in one sentence for the eye and the ear. */
export function foundWords(asked: boolean, running: boolean, calledOff: boolean, found: number): string {
  const count = `${found} ${found === 1 ? 'arrangement fits' : 'arrangements fit'}`;
  if (!asked) return 'Nothing has been looked for yet.';
  if (running) return found === 0 ? 'None found so far.' : `${count} so far.`;
  if (calledOff)
    return found === 0
      ? 'Stopped before any was found.'
      : `${count}. The search was stopped: there may be more.`;
  return found === 0 ? 'Nothing fits this car as it is drawn and held.' : `${count}.`;
}

/** "2 × Universal joint …, 1 on the shelf". */
export function newPartWords({ words, count, onShelf }: NewPart): string {
  const many = count === 1 ? '' : `${count} × `;
  const shelf = onShelf === 0 ? '' : onShelf >= count ? ', on the shelf' : `, ${onShelf} on the shelf`;
  return `${many}${words}${shelf}`;
}

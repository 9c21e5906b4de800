/**
 * The ground that the page stood on last, laid before anything is drawn: the settings come only with the program's first answer,
 * and by night a page that is paper until then is a flash in the eyes.
 */
export const GROUND_KEY = 'toeboard-ground';

try {
  if (localStorage.getItem(GROUND_KEY) === 'night') document.documentElement.dataset['ground'] = 'night';
} catch {
  // A page that may keep nothing begins on paper.
}

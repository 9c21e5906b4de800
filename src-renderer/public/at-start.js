// Before the page is painted for the first time: the ground that it stood on last (at the very first start the computer's) and
// whether a board was open, since the settings come only with the program's first answer. By night a page that is paper until
// then is a flash in the eyes.
try {
  const page = document.documentElement;
  const ground = localStorage.getItem('toeboard-ground');
  const dark = ground === null ? matchMedia('(prefers-color-scheme: dark)').matches : ground === 'night';
  if (dark) page.dataset.ground = 'night';
  if (localStorage.getItem('toeboard-frame') === 'board') page.dataset.frame = 'board';
} catch {
  // A page that may keep nothing begins on paper.
}

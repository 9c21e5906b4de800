// Before the page is painted for the first time: the ground that it stood on last and whether a board was open, since the settings
// come only with the program's first answer. By night a page that is paper until then is a flash in the eyes.
try {
  const page = document.documentElement;
  if (localStorage.getItem('toeboard-ground') === 'night') page.dataset.ground = 'night';
  if (localStorage.getItem('toeboard-frame') === 'board') page.dataset.frame = 'board';
} catch {
  // A page that may keep nothing begins on paper.
}

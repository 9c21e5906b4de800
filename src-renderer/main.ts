import './host/language.ts';

// By a second step: what several parts of the page share is in files of its own, which would be run before a line of this one.
void import('./page.ts');

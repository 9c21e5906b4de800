/**
 * Loaded before all else. A browser started in the plain "C" locale can report a language tag, as "en-US@posix", that
 * its own number formats refuse; the plotting library asks for them as it loads, and the page would stay empty.
 */
try {
  new Intl.NumberFormat(navigator.language);
} catch {
  Object.defineProperty(navigator, 'language', { value: 'en-US', configurable: true });
}

import { afterAll, beforeAll, vi } from 'vitest';

/**
 * For a test file that puts something into a table of the program, or something in a module's place: whatever it imports
 * by `await import()` is loaded anew for it, and anew again for the files after it, which share its process.
 */
export function useFreshModules(): void {
  beforeAll(() => {
    vi.resetModules();
  });
  afterAll(() => {
    vi.resetModules();
  });
}

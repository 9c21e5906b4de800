/**
 * What the board's page may load and do, the same in both hosts: its own files and nothing else. No inline code
 * and no inline styles: Svelte and Konva set styles through the style object, which needs no leave.
 */
export const CONTENT_POLICY = [
  "default-src 'self'",
  // What is worked out beside the page runs from a file of the program's own.
  "worker-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': CONTENT_POLICY,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

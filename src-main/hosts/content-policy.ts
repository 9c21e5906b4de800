const RULES = [
  "default-src 'self'",
  // What is worked out beside the page runs from a file of the program's own.
  "worker-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
];

/**
 * What the board's page may load and do, the same in both hosts: its own files and nothing else. No inline code
 * and no inline styles: Svelte and Konva set styles through the style object, which needs no leave.
 */
export const CONTENT_POLICY = RULES.join('; ');

/**
 * The scripts that decode pictures beside the page: the libraries that do it are compiled code (WebAssembly), which a page may
 * not start. A worker goes by the policy that comes with its own script, so that the page itself needs no such leave.
 */
const DECODER = /^\/assets\/(?:heic-decoder|pdf-reader)-worker-[\w-]+\.js$/;
const DECODER_POLICY = [...RULES, "script-src 'self' 'wasm-unsafe-eval'"].join('; ');

export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': CONTENT_POLICY,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

/** The headers of a file of the built board, by its path in the address. */
export function headersOf(path: string): Readonly<Record<string, string>> {
  return DECODER.test(path)
    ? { ...SECURITY_HEADERS, 'content-security-policy': DECODER_POLICY }
    : SECURITY_HEADERS;
}

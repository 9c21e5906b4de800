/** As much as is used of the reader of fonts, which brings no types of its own. */
declare module 'fontkit' {
  export function create(file: Uint8Array): unknown;
}

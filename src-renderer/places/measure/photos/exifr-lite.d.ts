// The package's own types stand under its main name alone.
declare module 'exifr/dist/lite.esm.mjs' {
  export { parse } from 'exifr';
}

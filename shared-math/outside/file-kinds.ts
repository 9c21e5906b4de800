/**
 * What a file is, by its first and last bytes, for a person who brought the wrong one. The marks are those that each
 * format's own description gives its files, as the registry of media types or the format's standard names them:
 * ISO/IEC 14496-12 (`ftyp`), RFC 9559 (Matroska), RFC 3533 (Ogg), ISO/IEC 21320-1 (ZIP), ISO 29500-2 and ISO/IEC 26300
 * (documents in ZIP), RFC 1952 (gzip), TIFF 6.0, ISO 32000 (PDF); the others from memory.
 */

/** Bytes of a file's beginning, and of its end, that are looked at. */
export const LOOKED_AT = 65_536;

interface Ends {
  /** Both as one letter a byte. */
  readonly head: string;
  readonly tail: string;
}

const at =
  (place: number, ...marks: readonly string[]) =>
  ({ head }: Ends) =>
    marks.some((mark) => head.startsWith(mark, place));
const begins = (...marks: readonly string[]) => at(0, ...marks);

/** One chunk in the manner of RIFF, and its kind. */
const riff = (kind: string) => (ends: Ends) => begins('RIFF')(ends) && at(8, kind)(ends);

/** A box of the base media format says which family its file is of. */
const brand =
  (pattern: RegExp) =>
  ({ head }: Ends) =>
    head.startsWith('ftyp', 4) && pattern.test(head.slice(8, 12));

/** An archive that is a document names its parts, at its beginning or in the list at its end. */
const holds = (part: RegExp) => (ends: Ends) =>
  begins('PK\x03\x04')(ends) && part.test(ends.head + ends.tail);

const text =
  (pattern: RegExp) =>
  ({ head }: Ends) =>
    pattern.test(head.replace(/^\u00ef\u00bb\u00bf/, '').slice(0, 1000));

/** The first that fits is what the file is; each ends a sentence that begins "it is". */
const KINDS: readonly (readonly [is: string, fits: (ends: Ends) => boolean])[] = [
  ['a JPEG picture', begins('\xff\xd8\xff')],
  ['a PNG picture', begins('\x89PNG\r\n\x1a\n')],
  ['a WebP picture', riff('WEBP')],
  ['an animated picture', brand(/^(avis|hevc|hevx|msf1)$/)],
  ['a HEIC picture', brand(/^(hei[cxms]|hev[ms]|mif[12])$/)],
  ['an AVIF picture', brand(/^avif$/)],
  ['a PDF', ({ head }) => head.slice(0, 1024).includes('%PDF-')],
  ['a GIF picture', begins('GIF8')],
  ['a BMP picture', ({ head }) => head.startsWith('BM') && head.startsWith('\0\0\0\0', 6)],
  ['a TIFF picture or a camera’s raw file', begins('II*\0', 'MM\0*', 'II+\0', 'MM\0+')],
  ['a JPEG XL picture', begins('\xff\n')],
  ['a JPEG XL picture', at(4, 'JXL ')],
  ['a JPEG 2000 picture', begins('\xff\x4f\xff\x51')],
  ['a JPEG 2000 picture', at(4, 'jP  ')],
  ['a camera’s raw file', brand(/^crx $/)],
  ['a picture in layers (PSD)', begins('8BPS')],
  ['an icon', begins('\0\0\x01\0')],
  ['a sound recording', brand(/^(M4A|M4B)/)],
  ['a movie', (ends) => begins('\0')(ends) && at(4, 'ftyp', 'moov', 'mdat', 'wide', 'free')(ends)],
  [
    'a movie',
    begins('\x1a\x45\xdf\xa3', '\0\0\x01\xba', '\0\0\x01\xb3', 'FLV\x01', '\x30\x26\xb2\x75\x8e\x66\xcf\x11'),
  ],
  ['a movie', riff('AVI ')],
  ['a sound recording', riff('WAVE')],
  [
    'a sound recording',
    begins('ID3', 'OggS', 'fLaC', '#!AMR', '\xff\xfb', '\xff\xf3', '\xff\xf1', '\xff\xf9'),
  ],
  ['a Word document', holds(/word\/document\d*\.xml/)],
  ['an Excel workbook', holds(/xl\/workbook\.(xml|bin)/)],
  ['a PowerPoint presentation', holds(/ppt\/presentation\.xml/)],
  ['a text document (ODF)', holds(/mimetypeapplication\/vnd\.oasis\.opendocument\.text/)],
  ['a spreadsheet (ODF)', holds(/mimetypeapplication\/vnd\.oasis\.opendocument\.spreadsheet/)],
  ['a drawing or presentation (ODF)', holds(/mimetypeapplication\/vnd\.oasis\.opendocument\./)],
  ['an e-book', holds(/mimetypeapplication\/epub\+zip/)],
  ['a ZIP archive', begins('PK\x03\x04', 'PK\x05\x06', 'PK\x07\x08')],
  ['an older office document', begins('\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1')],
  ['an RTF document', begins('{\\rtf')],
  ['an archive (RAR)', begins('Rar!\x1a\x07')],
  ['an archive (7z)', begins('7z\xbc\xaf\x27\x1c')],
  ['an archive (gzip)', begins('\x1f\x8b')],
  ['an archive (xz)', begins('\xfd7zXZ\0')],
  ['an archive (bzip2)', ({ head }) => /^BZh[1-9]1AY/.test(head)],
  ['an archive (tar)', at(257, 'ustar')],
  ['a database', begins('SQLite format 3\0')],
  ['a program', begins('MZ', '\x7fELF', '\xcf\xfa\xed\xfe', '\xca\xfe\xba\xbe')],
  ['a font', begins('\0\x01\0\0\0', 'OTTO', 'ttcf', 'wOFF', 'wOF2')],
  ['an SVG drawing', text(/^\s*(<\?xml[^>]*>\s*)?(<!--.*?-->\s*)*(<!DOCTYPE svg[^>]*>\s*)?<svg[\s>]/is)],
  ['a web page', text(/^\s*(<!doctype html|<html[\s>])/i)],
  ['an XML file', text(/^\s*<\?xml/)],
  ['a DXF drawing', text(/^(\s*999\r?\n[^\n]*\n)*\s*0\r?\nSECTION\r?\n/)],
  ['PostScript', begins('%!PS')],
  ['plain text', begins('\xff\xfe', '\xfe\xff')],
  ['an e-mail', text(/^(From|Received|Return-Path|Delivered-To|MIME-Version|Message-ID): /i)],
];

function letters(bytes: Uint8Array): string {
  let out = '';
  for (let at = 0; at < bytes.length; at += 4096)
    out += String.fromCharCode(...bytes.subarray(at, at + 4096));
  return out;
}

/** Whether every byte is one that a text in UTF-8 or a single-byte alphabet may have. */
function isText(head: string): boolean {
  for (let at = 0; at < head.length; at += 1) {
    const code = head.charCodeAt(at);
    if (code < 9 || (code > 13 && code < 32 && code !== 27) || code === 127) return false;
  }
  return true;
}

/**
 * What a file is in a person's words: "a movie", "plain text", "a ZIP archive".
 *
 * @param head Its first bytes, `LOOKED_AT` or all of them.
 * @param tail Its last bytes likewise.
 * @returns undefined if its bytes say nothing that is known here.
 */
export function fileKind(head: Uint8Array, tail: Uint8Array = new Uint8Array(0)): string | undefined {
  if (head.length === 0) return undefined;
  const ends: Ends = { head: letters(head.subarray(0, LOOKED_AT)), tail: letters(tail.subarray(-LOOKED_AT)) };
  const found = KINDS.find(([, fits]) => fits(ends));
  if (found) return found[0];
  return isText(ends.head) ? 'plain text' : undefined;
}

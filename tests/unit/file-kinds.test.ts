import { describe, expect, test } from 'vitest';
import { fileKind } from '../../shared-math/outside/file-kinds.ts';
import { avifFile, heicFile } from '../support/heif-files.ts';
import { pagesPdf } from '../support/pdf-files.ts';
import { greyPng, jpegHeaders, webpHeader } from '../support/picture-files.ts';

const bytes = (text: string) => Buffer.from(text, 'latin1');

describe('a file is called by what its bytes say', () => {
  // First bytes as the formats' own descriptions give them; see shared-math/outside/file-kinds.ts.
  test.each<[string, Uint8Array]>([
    ['a JPEG picture', jpegHeaders(4, 4)],
    ['a PNG picture', greyPng()],
    ['a WebP picture', webpHeader(4, 4)],
    ['a HEIC picture', heicFile()],
    ['an AVIF picture', avifFile()],
    ['a PDF', pagesPdf(1)],
    ['a PDF', bytes(`${'\n'.repeat(40)}%PDF-1.4`)],
    ['a GIF picture', bytes('GIF89a')],
    ['a TIFF picture or a camera’s raw file', bytes('II*\0\x08\0\0\0')],
    ['a movie', bytes('\0\0\0\x20ftypisom\0\0\x02\0')],
    ['a movie', bytes('\0\0\0\x14ftypqt  ')],
    ['a movie', bytes('\x1a\x45\xdf\xa3\x9f')],
    ['a movie', bytes('RIFF\0\0\0\0AVI LIST')],
    ['a sound recording', bytes('RIFF\0\0\0\0WAVEfmt ')],
    ['a sound recording', bytes('\0\0\0\x20ftypM4A ')],
    ['a sound recording', bytes('OggS\0\x02')],
    ['a ZIP archive', bytes('PK\x03\x04\x14\0')],
    ['an archive (gzip)', bytes('\x1f\x8b\x08')],
    ['a program', bytes('\x7fELF\x02\x01')],
    ['a database', bytes('SQLite format 3\0')],
    ['a web page', bytes('<!DOCTYPE html><html>')],
    ['an SVG drawing', bytes('<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg">')],
    ['a DXF drawing', bytes('  0\r\nSECTION\r\n  2\r\nHEADER\r\n')],
    ['a text document (ODF)', bytes('PK\x03\x04....mimetypeapplication/vnd.oasis.opendocument.text')],
    ['plain text', bytes('Dear customer,\r\n\tthe car')],
    ['plain text', bytes('\xff\xfeD\0e\0')],
    ['plain text', bytes('a free moov, by ftyp')],
  ])('%s', (kind, file) => {
    expect(fileKind(file)).toBe(kind);
  });

  test('an archive that is a document names it at its end', () => {
    expect(fileKind(bytes('PK\x03\x04'), bytes('PK\x01\x02 word/document.xml'))).toBe('a Word document');
    expect(fileKind(bytes('PK\x03\x04'), bytes('PK\x01\x02 xl/workbook.xml'))).toBe('an Excel workbook');
  });

  test('what is not known is called nothing', () => {
    expect(fileKind(bytes(''))).toBeUndefined();
    expect(fileKind(bytes('\x00\x9c\x01\x02'))).toBeUndefined();
  });
});

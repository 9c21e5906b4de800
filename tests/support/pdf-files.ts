import { deflateSync } from 'node:zlib';
import PDFDocument from 'pdfkit';

// PDF files for tests: drawn by the library that makes the program's own sheets, or written by hand where no library would.

const QUARTERS = ['#f00', '#0f0', '#00f', '#000'] as const;

/** One page of a drawing, points: four quarters in these colours, row by row from the top left, on the whole page. */
export interface DrawnPage {
  readonly size: readonly [number, number];
  readonly colours?: readonly string[];
  /** Degrees clockwise by which a reader turns the page. */
  readonly turned?: 0 | 90 | 180 | 270;
  /** Written in the middle, in a type that the file does not carry. */
  readonly words?: string;
}

export async function drawnPdf(pages: readonly DrawnPage[], password?: string): Promise<Buffer> {
  const locked = password === undefined ? {} : { userPassword: password };
  const document = new PDFDocument({ autoFirstPage: false, margin: 0, ...locked });
  const chunks: Buffer[] = [];
  document.on('data', (chunk: Buffer) => chunks.push(chunk));
  const whole = new Promise((done) => document.on('end', done));
  for (const { size, colours = QUARTERS, turned = 0, words } of pages) {
    const [width, height] = size;
    document.addPage({ size: [width, height], margin: 0 });
    if (turned !== 0) Object.assign(document.page.dictionary.data, { Rotate: turned });
    for (const [i, colour] of colours.entries())
      document.rect((i % 2) * (width / 2), i < 2 ? 0 : height / 2, width / 2, height / 2).fill(colour);
    if (words !== undefined)
      document
        .fill('#fff')
        .font('Helvetica-Bold')
        .fontSize(40)
        .text(words, 10, height / 2 + 20);
  }
  document.end();
  await whole;
  return Buffer.concat(chunks);
}

/** A PDF of these objects, the first being its catalogue. */
function written(objects: readonly string[]): Buffer {
  let text = '%PDF-1.7\n';
  const places = objects.map((object, i) => {
    const at = text.length;
    text += `${i + 1} 0 obj\n${object}\nendobj\n`;
    return at;
  });
  const table = text.length;
  text += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n`;
  text += places.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('');
  text += `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${table}\n%%EOF\n`;
  return Buffer.from(text, 'latin1');
}

const page = (more: string) => `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 400 300] ${more} >>`;
const stream = (head: string, content: string) =>
  `<< ${head} /Length ${content.length} >>\nstream\n${content}\nendstream`;

/** One with any number of pages, all alike. */
export function pagesPdf(count: number): Buffer {
  const kids = Array.from({ length: count }, (_, i) => `${i + 4} 0 R`).join(' ');
  return written([
    '<< /Type /Catalog /Pages 2 0 R >>',
    `<< /Type /Pages /Kids [${kids}] /Count ${count} >>`,
    stream('', '0 0 1 rg 0 0 200 150 re f'),
    ...Array.from({ length: count }, () => page('/Contents 3 0 R')),
  ]);
}

/** One whose only page shows a picture that claims any size, in a few bytes. */
export function bombPdf(width: number, height: number): Buffer {
  const data = deflateSync(Buffer.alloc(1000)).toString('latin1');
  return written([
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    page('/Contents 4 0 R /Resources << /XObject << /Im 5 0 R >> >>'),
    stream('', 'q 400 0 0 300 0 0 cm /Im Do Q'),
    stream(
      `/Type /XObject /Subtype /Image /Width ${width} /Height ${height} /ColorSpace /DeviceRGB /BitsPerComponent 8 /Filter /FlateDecode`,
      data,
    ),
  ]);
}

/** One whose page claims any size, points. */
export function hugePagePdf(width: number, height: number): Buffer {
  return written([
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 ${width} ${height}] >>`,
  ]);
}

/**
 * Four quarters, 96 by 64 px, as some scanners write them: JPEG 2000, by OpenJPEG's own encoder program (Debian's libopenjp2-tools,
 * `opj_compress -r 60 -n 3`) from an invented picture.
 */
const QUARTERS_J2K = [
  '/0//UQAvAAAAAABgAAAAQAAAAAAAAAAAAAAAYAAAAEAAAAAAAAAAAAADBwEBBwEBBwEB/1IADAAAAAEBAgQEAAH/XAAKQEBISFBI',
  'SFD/ZAAlAAFDcmVhdGVkIGJ5IE9wZW5KUEVHIHZlcnNpb24gMi41LjD/kAAKAAAAAADNAAH/k98aoKrN0kLZxZcEaCdtjt9+iG/H',
  'KU1liZQAINqJWbdJiE7RzrkcAAAm2f8EO/4KgFS4rK9WoxX7Xgg+8pl5sS9wB1hVa5PQ7fILQPAMJAkk2CSNgbn00vr+CnBLH4KZ',
  'hoPJy1xDNQ7gT7WdYTTaww+E70nXLzuhnADCQifkii4aQeiiQJH2qOnJJwpLIsc/hAqqTrzcLOIASyLDEtOEICVrdpsjQYDOFiYA',
  'gt0ajtLQ/OqS1OHdINclE98iszQz/9k=',
];

/** One whose only page is such a scan. */
export function scanPdf(): Buffer {
  const scan = Buffer.from(QUARTERS_J2K.join(''), 'base64').toString('latin1');
  return written([
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    page('/Contents 4 0 R /Resources << /XObject << /Im 5 0 R >> >>'),
    stream('', 'q 400 0 0 300 0 0 cm /Im Do Q'),
    stream(
      '/Type /XObject /Subtype /Image /Width 96 /Height 64 /ColorSpace /DeviceRGB /BitsPerComponent 8 /Filter /JPXDecode',
      scan,
    ),
  ]);
}

import { PDFiumLibrary } from '@hyzyla/pdfium';

// An independent reader of PDFs: PDFium, compiled to run anywhere.

const MM_PER_POINT = 25.4 / 72;

/** A page as pixels: 4 bytes each, row by row. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Pixels to a millimetre across and down: the reader makes a page whole points large, and stretches it to them. */
  readonly perMm: readonly [across: number, down: number];
  readonly rgba: Uint8Array;
}

export interface ReadPage {
  /** Its text with all white space as single spaces. */
  readonly text: string;
  /** mm. */
  readonly width: number;
  readonly height: number;
  render(perMm: number): Promise<Pixels>;
}

let library: Promise<Awaited<ReturnType<typeof PDFiumLibrary.init>>> | undefined;

/** A PDF's pages. `use` may await their pictures; the file is closed after it. */
export async function readPdf<Value>(
  bytes: Uint8Array,
  use: (pages: readonly ReadPage[]) => Promise<Value> | Value,
): Promise<Value> {
  library ??= PDFiumLibrary.init();
  const document = await (await library).loadDocument(bytes);
  try {
    const pages = [...document.pages()].map((page): ReadPage => {
      const { originalWidth, originalHeight } = page.getOriginalSize();
      return {
        text: page.getText().replaceAll(/[\s\u00a0]+/g, ' '),
        width: originalWidth * MM_PER_POINT,
        height: originalHeight * MM_PER_POINT,
        render: async (perMm) => {
          let found: Pixels | undefined;
          await page.render({
            scale: perMm * MM_PER_POINT,
            render: async ({ data, width, height }) => {
              const pageWide = originalWidth * MM_PER_POINT;
              const pageTall = originalHeight * MM_PER_POINT;
              found = {
                rgba: Uint8Array.from(data),
                width,
                height,
                perMm: [width / pageWide, height / pageTall],
              };
              return new Uint8Array(0);
            },
          });
          return found as Pixels;
        },
      };
    });
    return await use(pages);
  } finally {
    document.destroy();
  }
}

/** How dark a pixel is, 0 white to 1 black. */
export function darkness({ rgba, width }: Pixels, x: number, y: number): number {
  const at = 4 * (y * width + x);
  return 1 - ((rgba[at] as number) + (rgba[at + 1] as number) + (rgba[at + 2] as number)) / 765;
}

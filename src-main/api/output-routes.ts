import { handbookPicture } from '../files/index.ts';
import type { OutputJobs } from '../output/jobs/index.ts';
import { PAPER_NAMES } from '../output/pens/papers.ts';

/*
 * What was made is fetched as it is, beside the calls of the contract, the same over both hosts:
 *     GET /output/JOB          → 200 the file, or 404
 *     GET /output/JOB/PART     → 200 a part of it, counted from 0: a page of a preview
 *     GET /output/handbook/a4  → 200 the handbook as a PDF, made as it is asked for; or /letter
 * Who may ask is the host's business and settled before.
 */

export interface OutputAnswer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly content: Uint8Array;
}

export interface OutputRoutes {
  get(path: string): Promise<OutputAnswer>;
}

const HANDBOOK_PATH = /^\/output\/handbook\/([a-z0-9]{1,10})$/;
const OUTPUT_PATH = /^\/output\/([0-9a-f-]{36})(?:\/(\d{1,4}))?$/;

export function isOutputPath(path: string): boolean {
  return path === '/output' || path.startsWith('/output/');
}

const MISSING: OutputAnswer = {
  status: 404,
  headers: { 'content-type': 'application/json; charset=utf-8' },
  content: Buffer.from(JSON.stringify({ reason: 'this output is not here: make it again' })),
};

/** A file's name in a header (RFC 6266): plain letters, and the whole name beside them. */
function disposition(fileName: string): string {
  const plain = fileName.replace(/[^\x20-\x7e]|["\\%]/g, '_');
  const whole = encodeURIComponent(fileName).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return `attachment; filename="${plain}"; filename*=UTF-8''${whole}`;
}

async function handbook(paperName: string): Promise<OutputAnswer> {
  const paper = PAPER_NAMES.find((name) => name === paperName);
  if (!paper) return MISSING;
  // Its words and pens are loaded when somebody wants it.
  const { printHandbook } = await import('../output/pages/handbook/handbook.ts');
  const content = await printHandbook({ paper, picture: handbookPicture, date: new Date() });
  return {
    status: 200,
    headers: {
      'content-type': 'application/pdf',
      'content-disposition': disposition('Toeboard handbook.pdf'),
    },
    content,
  };
}

export function outputRoutes(outputs: OutputJobs): OutputRoutes {
  return {
    get: async (path) => {
      const [, paper] = HANDBOOK_PATH.exec(path) ?? [];
      if (paper !== undefined) return handbook(paper);
      const [, job, part] = OUTPUT_PATH.exec(path) ?? [];
      const made = job === undefined ? undefined : outputs.made(job);
      const content = made?.parts[Number(part ?? 0)];
      if (!made || !content) return MISSING;
      return {
        status: 200,
        headers: { 'content-type': made.type, 'content-disposition': disposition(made.fileName) },
        content,
      };
    },
  };
}

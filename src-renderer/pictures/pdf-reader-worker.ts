import './pdf-reader-warnings.ts';
// Answers whoever started this worker by itself.
import 'pdfjs-dist/legacy/build/pdf.worker.min.mjs';

// The script of the worker in which the library reads a PDF.

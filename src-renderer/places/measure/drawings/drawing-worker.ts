import { serveJobs } from '../../../jobs/serve-jobs.ts';
import { drawingJob } from './drawing-job.ts';

// The script that runs in the worker that reads drawings.
serveJobs({ drawing: drawingJob });

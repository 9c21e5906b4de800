import { serveJobs } from '../../jobs/serve-jobs.ts';
import { answerJob } from './counter-job.ts';

// The script that runs in the counter's worker.
serveJobs({ answer: answerJob });

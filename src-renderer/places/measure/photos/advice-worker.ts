import { serveJobs } from '../../../jobs/serve-jobs.ts';
import { adviceJob } from './advice-job.ts';

// The script that runs in the worker of the photos' advice.
serveJobs({ advice: adviceJob });

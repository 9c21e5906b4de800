import { serveJobs } from '../../jobs/serve-jobs.ts';
import { verdictDoubtJob } from './verdict-doubt-job.ts';
import { verdictJob } from './verdict-job.ts';

// The script that judges layouts beside the page.
serveJobs({ verdict: verdictJob, 'verdict-doubt': verdictDoubtJob });

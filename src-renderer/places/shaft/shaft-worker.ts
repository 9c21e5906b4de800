import { serveJobs } from '../../jobs/serve-jobs.ts';
import { routeJob } from './route-job.ts';

// The script that runs in the shaft's worker.
serveJobs({ route: routeJob });

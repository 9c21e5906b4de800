import { serveJobs } from '../../jobs/serve-jobs.ts';
import { sensitivityJob } from '../../panels/points/sensitivity-job.ts';
import { forcesJob } from './links/forces-job.ts';
import { mapJob } from './map/map-job.ts';
import { roomJob } from './room/room-job.ts';
import { sitJob } from './sit/sit-job.ts';
import { bandJob } from './tolerance/band-job.ts';
import { holdsJob, tuneJob } from './tune/tune-job.ts';

// The script that runs in the layout's workers.
serveJobs({
  map: mapJob,
  tune: tuneJob,
  holds: holdsJob,
  sensitivity: sensitivityJob,
  band: bandJob,
  forces: forcesJob,
  sit: sitJob,
  room: roomJob,
});

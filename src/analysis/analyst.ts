/** Puts the analysis into workers, so that the page never stutters: live takes event by event, recordings as one answer. */

import type { Analyst } from '../ports.ts';
import { analysisOf, inspectionOf, Jobs } from './jobs.ts';
import { liveTake } from './live-take.ts';
import type { AnalysisWorker } from './messages.ts';

const analysisWorker = (): AnalysisWorker =>
  new Worker(new URL('./analysis.worker.ts', import.meta.url), { type: 'module' }) as AnalysisWorker;

/** @param spawn  makes one worker for each take and each recording */
export function createAnalyst(spawn: () => AnalysisWorker = analysisWorker): Analyst {
  const jobs = new Jobs(spawn);
  return {
    listen: (options) => liveTake({ worker: spawn(), ...options }),
    analyse: ({ recording, setup, signal }) => jobs.run(analysisOf(recording, setup), signal),
    inspect: ({ inspected, signal }) => jobs.run(inspectionOf(inspected), signal),
  };
}

import { describe, expect, it } from 'vitest';
import { createPlanner, type FromPlanner, type PlannerWorker, type ToPlanner } from '../../../src/analysis/planner.ts';

class FakeWorker implements PlannerWorker {
  onmessage: PlannerWorker['onmessage'] = null;
  onerror: PlannerWorker['onerror'] = null;
  readonly asked: ToPlanner[] = [];
  isOver = false;
  postMessage(message: ToPlanner): void {
    this.asked.push(message);
  }
  terminate(): void {
    this.isOver = true;
  }
  tell(data: FromPlanner): void {
    this.onmessage?.({ data } as MessageEvent<FromPlanner>);
  }
}

const question = { kind: 'question' } as never;

describe('createPlanner', () => {
  it('asks a worker of its own, tells how far it has come, and lets it go', async () => {
    const worker = new FakeWorker();
    const shares: number[] = [];
    const rows = createPlanner(() => worker).tryHere(question, {
      signal: new AbortController().signal,
      onProgress: (share) => shares.push(share),
    });
    worker.tell({ kind: 'progress', share: 0.5 });
    worker.tell({ kind: 'tried', rows: [{ spanLengthM: 0.1, plucks: 3, right: 2, wrong: 0 }] });
    expect(await rows).toEqual([{ spanLengthM: 0.1, plucks: 3, right: 2, wrong: 0 }]);
    expect(shares).toEqual([0.5]);
    expect(worker.isOver).toBe(true);
    expect(worker.asked).toEqual([{ kind: 'try', question }]);
  });

  it('gives up when aborted, before or meanwhile, and rejects where the worker breaks', async () => {
    const aborting = new AbortController();
    const worker = new FakeWorker();
    const planned = createPlanner(() => worker).plan(question, { signal: aborting.signal });
    aborting.abort(new Error('given up'));
    await expect(planned).rejects.toThrow('given up');
    expect(worker.isOver).toBe(true);
    await expect(createPlanner(() => worker).plan(question, { signal: aborting.signal })).rejects.toThrow('given up');

    const broken = new FakeWorker();
    const rows = createPlanner(() => broken).plan(question, { signal: new AbortController().signal });
    broken.onerror?.({ message: 'no script', preventDefault: () => {} } as ErrorEvent);
    await expect(rows).rejects.toThrow('no script');
  });

  it('answers undefined where there is nothing to plan', async () => {
    const worker = new FakeWorker();
    const planned = createPlanner(() => worker).plan(question, { signal: new AbortController().signal });
    worker.tell({ kind: 'planned', answer: undefined });
    expect(await planned).toBeUndefined();
  });
});

/** The check by draws against a worker made by hand: progress is passed on, and the worker is let go whatever happens. */

import { describe, expect, it } from 'vitest';
import { createRandomDraws, type DrawsWorker, type FromDraws } from '../../../src/analysis/draws.ts';
import type { DrawnAnswer } from '../../../src/core/drawn-answer.ts';
import { UNKNOWN_ENDS } from '../../../src/core/setup.ts';

const TAKE = { sounds: [], setup: { ends: UNKNOWN_ENDS }, sampleRateHz: 48_000 };
const ANSWER: DrawnAnswer = {
  forceN: { value: 8, low: 7, high: 9, u95: 1 },
  draws: 10,
  effectiveDraws: 10,
  shareWithoutForce: 0,
  histogram: { fromN: 7, binWidthN: 1, shares: [0.5, 0.5] },
  agreement: 'agree',
};

function drawing() {
  const worker: DrawsWorker & { asked: unknown[]; gone: number } = {
    asked: [],
    gone: 0,
    onmessage: null,
    onerror: null,
    postMessage: (message) => worker.asked.push(message),
    terminate: () => {
      worker.gone += 1;
    },
  };
  const shares: number[] = [];
  const aborting = new AbortController();
  const draw = () =>
    createRandomDraws(() => worker).draw({ take: TAKE, seed: 3, onProgress: (share) => shares.push(share), signal: aborting.signal });
  const say = (data: FromDraws) => worker.onmessage?.({ data } as MessageEvent<FromDraws>);
  return { worker, shares, aborting, draw, say };
}

describe('the check by draws', () => {
  it('passes progress on, answers, and lets the worker go', async () => {
    const { worker, shares, draw, say } = drawing();
    const answer = draw();
    say({ kind: 'progress', share: 0.5 });
    say({ kind: 'drawn', answer: ANSWER });
    expect(await answer).toEqual(ANSWER);
    expect([shares, worker.gone, worker.asked]).toEqual([[0.5], 1, [{ take: TAKE, seed: 3 }]]);
  });

  it('is given up with the reason of the signal', async () => {
    const { worker, aborting, draw } = drawing();
    const answer = draw();
    aborting.abort(new Error('enough'));
    await expect(answer).rejects.toThrow('enough');
    expect(worker.gone).toBe(1);
    await expect(draw()).rejects.toThrow('enough');
    expect(worker.asked).toHaveLength(1);
  });

  it('says where the worker broke', async () => {
    const { worker, draw } = drawing();
    const answer = draw();
    worker.onerror?.({ message: 'out of memory', preventDefault: () => {} } as ErrorEvent);
    await expect(answer).rejects.toThrow('out of memory');
    expect(worker.gone).toBe(1);
  });
});

/** The worker that draws: one question in, progress and one answer out. Everything that it computes stands in the core. */

import { drawnAnswer } from '../core/drawn-answer.ts';
import type { FromDraws, ToDraws } from './draws.ts';

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<ToDraws>) => void) | null;
  postMessage(message: FromDraws): void;
};

scope.onmessage = ({ data: { take, seed } }) => {
  const answer = drawnAnswer(take, { seed, progress: (share) => scope.postMessage({ kind: 'progress', share }) });
  scope.postMessage({ kind: 'drawn', answer });
};

/** The worker that plans: one question in, progress and one answer out. Everything that it computes stands in the core. */

import { askPlan } from '../core/machine/ask-plan.ts';
import { askSecond } from '../core/machine/second-position.ts';
import { trial } from '../core/machine/trial.ts';
import type { FromPlanner, ToPlanner } from './planner.ts';

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<ToPlanner>) => void) | null;
  postMessage(message: FromPlanner): void;
};

scope.onmessage = ({ data }) => {
  if (data.kind === 'plan') return scope.postMessage({ kind: 'planned', answer: askPlan(data.asked) });
  if (data.kind === 'second') return scope.postMessage({ kind: 'second-planned', second: askSecond(data.asked) });
  const running = trial(data.question);
  for (;;) {
    const { value, done } = running.next();
    if (done) return scope.postMessage({ kind: 'tried', rows: value });
    scope.postMessage({ kind: 'progress', share: value });
  }
};

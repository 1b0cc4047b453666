/** Waiting with an end: a browser may leave the promise of a sleeping audio context unanswered for ever. */

/** Whether the promise was kept in time; a broken promise counts as not kept. The promise itself goes on. */
export function keptWithin(promise: Promise<unknown>, limitMs: number): Promise<boolean> {
  return new Promise((resolve) => {
    const timer = setTimeout(() => resolve(false), limitMs);
    const settle = (kept: boolean) => {
      clearTimeout(timer);
      resolve(kept);
    };
    promise.then(
      () => settle(true),
      () => settle(false),
    );
  });
}

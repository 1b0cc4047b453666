/** Counts samples that stand at the rails, where the sound was cut off at the top. */

/** Full scale less the last bits that converters lose. */
const RAIL = 0.985;
/** As many equal samples in a row, this near to the largest so far, are a rail too: sound that was clipped before it was turned down. */
const FLAT_RUN = 8;
const FLAT_NEAR_LARGEST = 0.9;
const FLAT_AT_LEAST = 0.05;

export interface RailCounter {
  push(samples: Float32Array): void;
  /** Share of clipped samples between two indices of the decimated take, 0 to 1. */
  share(from: number, to: number): number;
}

/** @param factor  input samples for one decimated sample */
export function createRailCounter(factor: number): RailCounter {
  /** Decimated indices at which clipped input samples stand, with their number; sparse, since most sound is not clipped. */
  const counts = new Map<number, number>();
  let index = 0;
  let largest = FLAT_AT_LEAST;
  let run = 0;
  let last = 0;
  const count = (samples: number) => {
    const at = Math.floor(index / factor);
    counts.set(at, (counts.get(at) ?? 0) + samples);
  };
  return {
    push(samples) {
      for (const x of samples) {
        const size = Math.abs(x);
        run = x === last && size >= FLAT_NEAR_LARGEST * largest ? run + 1 : 1;
        largest = Math.max(largest, size);
        last = x;
        if (size >= RAIL) count(1);
        else if (run === FLAT_RUN) count(FLAT_RUN);
        else if (run > FLAT_RUN) count(1);
        index++;
      }
      for (const at of counts.keys()) {
        if (at > index / factor - KEPT) break;
        counts.delete(at);
      }
    },
    share(from, to) {
      let clipped = 0;
      for (const [at, samples] of counts) if (at >= from && at < to) clipped += samples;
      return Math.min(1, clipped / Math.max(1, (to - from) * factor));
    },
  };
}

/** Decimated samples that are remembered, some four seconds. */
const KEPT = 65_536;

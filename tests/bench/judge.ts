/** How an answer compares with the truth. */

export interface Answered {
  readonly hertz: number | undefined;
  readonly truthHz: number;
  /** Partials of the plain beam, Hz. */
  readonly partialsHz: readonly number[];
}

export const RIGHT = 0.01;
export const NEAR = 0.03;

export const errorOf = ({ hertz, truthHz }: Answered): number | undefined => (hertz === undefined ? undefined : hertz / truthHz - 1);

export const isWithin = (answered: Answered, relative: number): boolean => {
  const error = errorOf(answered);
  return error !== undefined && Math.abs(error) <= relative;
};

export const isRight = (answered: Answered): boolean => isWithin(answered, RIGHT);

const FALSE_RATIOS = [1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 2, 2, 3, 4];

/** A simple fraction or multiple of the truth, or one of its other partials, taken for the first. */
export function isOctaveType(answered: Answered): boolean {
  const { hertz, truthHz, partialsHz } = answered;
  if (hertz === undefined || isWithin(answered, NEAR)) return false;
  const isAt = (falseHz: number) => Math.abs(hertz / falseHz - 1) <= NEAR;
  return FALSE_RATIOS.some((ratio) => isAt(ratio * truthHz)) || partialsHz.slice(1, 4).some(isAt);
}

export const cents = (answered: Answered): number | undefined =>
  answered.hertz === undefined ? undefined : 1200 * Math.abs(Math.log2(answered.hertz / answered.truthHz));

/** Three contacts across a belt: the outer two hold it, the middle one presses it aside. Force law, build of the gauge, ceiling. */

/**
 * Side force per deflection d of the middle contact on a belt that runs on beyond the outer ones:
 * d = (F/4T)(b − 2δ(1 − e) − δ(1 − e)²), δ = √(EI/T), e = exp(−b/2δ). Of a limp belt F = 4 T d/b.
 *
 * Tensioned Euler-Bernoulli beam on three point supports, small deflections.
 *
 * @param told.baseM  between the outer contacts, > 0
 * @returns N/m, > 0
 */
export function sideForcePerDeflection(told: { forceN: number; baseM: number; bendingStiffnessNm2: number }): number {
  const { forceN: T, baseM: b, bendingStiffnessNm2: EI } = told;
  if (!(T > 0 && b > 0 && EI >= 0)) throw new RangeError(`sideForcePerDeflection needs force and base above 0, got ${T} N and ${b} m`);
  const δ = Math.sqrt(EI / T);
  const e = δ > 0 ? Math.exp(-b / (2 * δ)) : 0;
  const free = 1 - e;
  return (4 * T) / (b - 2 * δ * free - δ * free * free);
}

/** How a gauge of three contacts and a spring is built. */
export interface GaugeBuild {
  /** Between the outer contacts, > 0. */
  readonly baseM: number;
  /** How far the free middle contact stands beyond the line of the outer ones, belt's own side, > 0. */
  readonly reachM: number;
  /** Travel of the middle contact until it meets its stop; where it is not told, until it comes level. */
  readonly travelM?: number | undefined;
  /** N per metre of travel, > 0. */
  readonly springNPerM: number;
}

/**
 * Travel x of the middle contact under a belt force: spring k x against the belt's side force at the deflection (reach − x). Of a limp belt
 * x = p F/(F + k b/4), the saturating law.
 */
export function travelUnder({ baseM, reachM, travelM = reachM, springNPerM }: GaugeBuild, forceN: number, bendingStiffnessNm2 = 0): number {
  if (!(forceN > 0)) return 0;
  const side = sideForcePerDeflection({ forceN, baseM, bendingStiffnessNm2 });
  return Math.min(travelM, (side * reachM) / (side + springNPerM));
}

/** What no belt, however tight, can push the gauge beyond. */
export interface Ceiling {
  readonly why: 'stop' | 'level';
  readonly travelM: number;
  /** Force at which a limp belt meets the stop; level is never quite reached. */
  readonly forceN?: number | undefined;
}

export function ceilingOf({ baseM, reachM, travelM, springNPerM }: GaugeBuild): Ceiling {
  if (travelM === undefined || travelM >= reachM) return { why: 'level', travelM: reachM };
  return { why: 'stop', travelM, forceN: (springNPerM * travelM * baseM) / (4 * (reachM - travelM)) };
}

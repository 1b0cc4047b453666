/** The frequency equation of a tensioned Euler-Bernoulli beam in its phase form: one smooth function whose root of number n is partial n. */

/** Fixity of the two ends: 0 hinged, 1 clamped. */
export type EndFixities = readonly [number, number];

/** The phase function and its partial derivatives, b, a, ξ and the fixities taken as independent. */
export interface BeamPhase {
  readonly value: number;
  readonly perB: number;
  readonly perA: number;
  readonly perXi: number;
  readonly perFixity: readonly [number, number];
}

/**
 * Φ(b) = b − atan2(Q, P) + (−1)ⁿ asin(R / hypot(P, Q)) − n π, zero where the beam rings in its mode n.
 *
 * The mode is sin and cos of b x/L and decays at the ends as exp(−a x/L), with a² − b² = ξ², ξ = L sqrt(T/EI). An end of fixity φ resists
 * rotation with the moment φ/(1−φ) sqrt(EI T) per radian. With N = a² + b² and A0 = (1−φ1)(1−φ2), A1 = φ1(1−φ2) + φ2(1−φ1), A2 = φ1 φ2:
 * P = A0 N² + A1 ξ N a coth a + A2 ξ⁴, Q = b (A1 ξ N + 2 A2 ξ² a coth a), R = 2 A2 ξ² a b / sinh a. The four end conditions give
 * P sin b − Q cos b + R = 0; this form has no poles, does not overflow, and never takes one mode for its neighbour.
 *
 * @param at.b       wave number times span length, > 0
 * @param at.a       decay number times span length, > 0
 * @param at.xi      L sqrt(T/EI), > 0
 * @param at.number  mode number n, counted from 1
 */
export function beamPhase(at: { b: number; a: number; xi: number; fixity: EndFixities; number: number }): BeamPhase {
  const { b, a, xi, number } = at;
  const [φ1, φ2] = at.fixity;
  const N = a * a + b * b;
  const decay = Math.exp(-a);
  const sinh = (1 - decay * decay) / (2 * decay);
  const coth = (1 + decay * decay) / (1 - decay * decay);
  const c = a * coth;
  const cPerA = Number.isFinite(sinh) ? coth - a / (sinh * sinh) : 1;
  const s = Number.isFinite(sinh) ? a / sinh : 0;
  const sPerA = Number.isFinite(sinh) ? (1 - c) / sinh : 0;
  const sign = number % 2 === 0 ? 1 : -1;

  const A0 = (1 - φ1) * (1 - φ2);
  const A1 = φ1 * (1 - φ2) + φ2 * (1 - φ1);
  const A2 = φ1 * φ2;
  const xi2 = xi * xi;

  // P, Q and R are linear in A0, A1, A2: these are their factors, from which the derivatives by each fixity follow too.
  const P0 = N * N;
  const P1 = xi * N * c;
  const P2 = xi2 * xi2;
  const Q1 = b * xi * N;
  const Q2 = 2 * b * xi2 * c;
  const R2 = 2 * xi2 * b * s;
  const P = A0 * P0 + A1 * P1 + A2 * P2;
  const Q = A1 * Q1 + A2 * Q2;
  const R = A2 * R2;

  const H2 = P * P + Q * Q;
  const H = Math.sqrt(H2);
  const ratio = R / H;
  const cosine = Math.sqrt((1 - ratio) * (1 + ratio));
  /** Change of −atan2(Q, P) ± asin(R/H) with a change of P, Q and R. */
  const turn = (dP: number, dQ: number, dR: number): number =>
    -(P * dQ - Q * dP) / H2 + (sign * (dR - (R * (P * dP + Q * dQ)) / H2)) / (H * cosine);
  const perFixity = (other: number): number =>
    turn(-(1 - other) * P0 + (1 - 2 * other) * P1 + other * P2, (1 - 2 * other) * Q1 + other * Q2, other * R2);

  return {
    value: b - Math.atan2(Q, P) + sign * Math.asin(ratio) - number * Math.PI,
    perB: 1 + turn(4 * A0 * N * b + 2 * A1 * xi * b * c, Q / b + 2 * A1 * xi * b * b, R / b),
    perA: turn(4 * A0 * N * a + A1 * xi * (2 * a * c + N * cPerA), b * (2 * A1 * xi * a + 2 * A2 * xi2 * cPerA), 2 * A2 * xi2 * b * sPerA),
    perXi: turn(A1 * N * c + 4 * A2 * xi2 * xi, b * (A1 * N + 4 * A2 * xi * c), (2 * R) / xi),
    perFixity: [perFixity(φ2), perFixity(φ1)],
  };
}

/**
 * First guess of b for a known ξ: the hinged mode, lengthened at each end by that end's own phase.
 *
 * @param at.b  where the phase of the ends is taken, n π for a first guess
 */
export function guessedWaveNumber(at: { b: number; xi: number; fixity: EndFixities; number: number }): number {
  const { b, xi, fixity, number } = at;
  const a = Math.hypot(xi, b);
  const N = a * a + b * b;
  const lag = (φ: number): number => Math.atan2(xi * φ * b, (1 - φ) * N + xi * φ * a);
  return number * Math.PI + lag(fixity[0]) + lag(fixity[1]);
}

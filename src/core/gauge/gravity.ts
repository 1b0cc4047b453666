/** Local gravity from latitude and height: what turns a hung mass into a force. */

import type { Measured } from '../math/measured.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../quantity.ts';

/** WGS84's ellipsoid: normal gravity on it (Somigliana's closed form). NIMA TR8350.2, as reprinted in articles on theoretical gravity. */
const EQUATOR_M_PER_S2 = 9.7803253359;
const SOMIGLIANA = 0.00193185265241;
const ECCENTRICITY_SQUARED = 0.00669437999013;
/** Free-air gradient, from memory. */
const PER_METRE = -3.086e-6;
/** What rocks and mountains do to it: below 0.0005 m/s² nearly everywhere (common practice, no source). */
const ANOMALY_U = 0.0003;
/** Where the place is not known: from equator to pole even, half of 9.832 − 9.780 over √3. */
const ANYWHERE_U = 0.0259 / Math.sqrt(3);

export interface Place {
  /** Degrees, −90 to 90. */
  readonly latitudeDeg: number;
  /** Above sea level. */
  readonly heightM?: number | undefined;
}

/** m/s². @throws RangeError for a latitude beyond the poles */
export function localGravity(place: Place | undefined): Measured {
  if (!place) return { value: STANDARD_GRAVITY_M_PER_S2, standardUncertainty: ANYWHERE_U };
  const { latitudeDeg, heightM = 0 } = place;
  if (!(Math.abs(latitudeDeg) <= 90)) throw new RangeError(`localGravity needs a latitude from -90 to 90, got ${latitudeDeg}`);
  const sine = Math.sin((latitudeDeg * Math.PI) / 180) ** 2;
  const value = (EQUATOR_M_PER_S2 * (1 + SOMIGLIANA * sine)) / Math.sqrt(1 - ECCENTRICITY_SQUARED * sine) + PER_METRE * heightM;
  return { value, standardUncertainty: ANOMALY_U };
}

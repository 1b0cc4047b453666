/** The belt that a gauge was proved on, in words. */

import { beltById } from '../../../../shared/belts.ts';
import type { KeptGauge } from '../../../../shared/document/gauge.ts';
import type { KeptDocument } from '../../../../shared/document.ts';

/** '2 mm pitch, 6 mm wide', or the name of a kept belt; empty where it was not told. */
export function beltLabel({ beltId }: KeptGauge, { belts }: KeptDocument): string {
  if (beltId === undefined) return '';
  return belts.find(({ id }) => id === beltId)?.name ?? beltById(beltId)?.label ?? '';
}

/** A setup on its way between two devices: to the address that brings it, and from such an address to fields that can be used. */

import { beltById } from '../../../shared/belts.ts';
import type { KeptBelt } from '../../../shared/document/belt.ts';
import { type LinkFault, LONGEST_LINK, linkOf, readLink } from '../../../shared/link.ts';
import type { EnteredSetup } from '../../ports.ts';
import { keptBeltOf, linkedBelt } from './linked-belt.ts';
import { keptBeltById } from './own-belts.ts';
import { EMPTY_SETUP, OWN_BELT, type SetupField, understood } from './span-setup.ts';

/** @returns undefined where the fields hold more than a link may */
export function setupHref(entered: EnteredSetup, ownBelts: readonly KeptBelt[], page: string): string | undefined {
  const { beltId } = entered;
  const kept = keptBeltById(ownBelts, beltId);
  const link = linkOf({
    ...entered,
    beltId: kept || beltById(beltId) ? beltId : OWN_BELT,
    ends: [...entered.ends],
    lie: entered.lie,
    keptBelt: kept && linkedBelt(kept),
  });
  return link.length > LONGEST_LINK ? undefined : `${page.replace(/[?#].*$/u, '')}#/listen/from?${link}`;
}

/** A setup from a link, and the kept belt that came with it. */
export interface BroughtSetup {
  readonly entered: EnteredSetup;
  readonly belt?: KeptBelt | undefined;
}

/** Names in a link of the fields that a person types. */
const LINK_NAMES: Partial<Record<SetupField, string>> = {
  linearDensity: 'density',
  toothPitch: 'pitch',
  bendingStiffness: 'stiffness',
  spanLength: 'span',
  spanKnownTo: 'known',
  targetFrom: 'from',
  targetTo: 'to',
  tolerance: 'tolerance',
};

/** @param hash  of the address, with all that follows it */
export function setupFromHash(hash: string): BroughtSetup | LinkFault {
  const at = hash.indexOf('?');
  const read = readLink(at < 0 ? '' : hash.slice(at + 1));
  if ('kind' in read) return read;
  const { keptBelt, ...fields } = read;
  const belt = keptBelt && keptBeltOf(keptBelt);
  const isKnown = fields.beltId === OWN_BELT || beltById(fields.beltId) !== undefined || fields.beltId === belt?.id;
  if (!isKnown || (belt && fields.beltId !== belt.id)) return { kind: 'link-fault', why: 'bad-field', field: 'belt' };
  // What a link does not hold must not stay from the setup before.
  const entered: EnteredSetup = { ...EMPTY_SETUP, lie: undefined, weighing: undefined, ...fields };
  const [unreadable] = Object.keys(understood(entered, belt ? [belt] : []).faults) as SetupField[];
  return unreadable ? { kind: 'link-fault', why: 'bad-field', field: LINK_NAMES[unreadable] ?? unreadable } : { entered, belt };
}

/** A setup on its way between two devices: to the address that brings it, and from such an address to fields that can be used. */

import { beltById } from '../../../shared/belts.ts';
import { type LinkFault, LONGEST_LINK, linkOf, readLink } from '../../../shared/link.ts';
import type { EnteredSetup } from '../../ports.ts';
import { EMPTY_SETUP, OWN_BELT, type SetupField, understood } from './span-setup.ts';

/** @returns undefined where the fields hold more than a link may */
export function setupHref(entered: EnteredSetup, page: string): string | undefined {
  const { beltId } = entered;
  const link = linkOf({ ...entered, beltId: beltById(beltId) ? beltId : OWN_BELT, ends: [...entered.ends], lie: entered.lie });
  return link.length > LONGEST_LINK ? undefined : `${page.replace(/[?#].*$/u, '')}#/listen/from?${link}`;
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
export function setupFromHash(hash: string): EnteredSetup | LinkFault {
  const at = hash.indexOf('?');
  const read = readLink(at < 0 ? '' : hash.slice(at + 1));
  if ('kind' in read) return read;
  if (read.beltId !== OWN_BELT && !beltById(read.beltId)) return { kind: 'link-fault', why: 'bad-field', field: 'belt' };
  // What a link does not hold must not stay from the setup before.
  const setup: EnteredSetup = { ...EMPTY_SETUP, lie: undefined, weighing: undefined, ...read };
  const [unreadable] = Object.keys(understood(setup).faults) as SetupField[];
  return unreadable ? { kind: 'link-fault', why: 'bad-field', field: LINK_NAMES[unreadable] ?? unreadable } : setup;
}

/** The words in English for versions that two devices made apart from each other. */

import type { SectionName } from '../../shared/document.ts';

const KINDS: Readonly<Record<SectionName, string>> = {
  machines: 'machine',
  belts: 'belt',
  takes: 'take',
  gauges: 'gauge',
  entries: 'entry',
  rivals: 'version',
};

export const rivalsEn = {
  heading: (count: number) => (count === 1 ? 'One thing was changed on two devices' : `${count} things were changed on two devices`),
  lead: 'Nothing was lost. Look at both and keep the one that holds; the other is then let go.',
  of: (section: SectionName, name: string) => (name ? `The ${KINDS[section]} ${name}` : `A ${KINDS[section]}`),
  field: 'what',
  used: (when: string) => `in use, changed ${when}`,
  rival: (when: string) => `beside it, changed ${when}`,
  keep: (when: string) => `Keep that of ${when}`,
  none: 'not told',
  deleted: 'deleted',
  there: 'there',
} as const;

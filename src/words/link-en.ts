/** The words of sharing in English: a setup as a link and as a code, and what a link brings. */

import type { LinkFault } from '../../shared/link.ts';

const NAMES: Readonly<Record<string, string>> = {
  belt: 'the belt',
  density: 'the linear density',
  pitch: 'the tooth pitch',
  stiffness: 'the bending stiffness',
  span: 'the span length',
  known: 'how well the span is known',
  from: 'the target',
  to: 'the target',
  unit: 'the unit of force',
  tolerance: 'the tolerance',
  ends: 'the ends',
  lie: 'how the belt lies',
  weighed: 'the weighing',
  own: 'the belt',
};

const nameOf = (field: string): string => (Object.hasOwn(NAMES, field) ? NAMES[field]! : `‘${field}’`);

export const linkEn = {
  share: 'To a phone',
  title: 'This setup on a phone',
  beltTitle: 'This belt on a phone',
  beltLead:
    'Point the phone’s camera at the code, or send the link. The belt comes along with its values, and is kept there under its name.',
  lead: 'Point the phone’s camera at the code, or send the link. Belt, span and target come along; no sound and nothing that you keep.',
  here: 'This page stands on this computer alone, so that a phone cannot open it. Start it with npm start -- --lan, open the address that is printed, and share from there.',
  code: 'Code for a phone’s camera; it holds the link below',
  link: 'Link',
  copy: 'Copy the link',
  copied: 'Copied.',
  notCopied: 'The browser does not let this page copy. Mark the link and copy it yourself.',
  tooLong: 'These fields hold too much for a link. Shorten what was typed.',
  close: 'Close',

  from: {
    heading: 'A setup from a link',
    lead: 'This is what the link brings. The sound of takes is not in it.',
    keepsBelt: (name: string) => `${name} is kept among your belts.`,
    replaces: 'It takes the place of the setup that stands in Listen now.',
    use: 'Use it',
    leave: 'Leave it',
  },
  refused: {
    heading: 'This link cannot be used',
    safe: 'Nothing was changed.',
    back: 'Go to Listen',
  },
  fault(fault: LinkFault): string {
    switch (fault.why) {
      case 'empty':
        return 'There is nothing in it. It may have been cut on its way; ask for it again.';
      case 'too-long':
        return 'It is far longer than a setup is.';
      case 'other-version':
        return 'It was made by another version of this program. Reload this page, or set the fields by hand.';
      case 'unknown-field':
        return `It holds ${nameOf(fault.field)}, which no setup has.`;
      case 'field-twice':
        return `It holds ${nameOf(fault.field)} twice.`;
      case 'bad-encoding':
        return `In it, ${nameOf(fault.field)} is garbled. It may have been cut on its way; ask for it again.`;
      default:
        return `In it, ${nameOf(fault.field)} is not a value that it can have.`;
    }
  },
} as const;

/** The pages of a machine besides itself, as its sheet offers them; the best next step first. */

import type { Machine } from '../../../../shared/document/machine.ts';
import { machinesEn as words } from '../../../words/machines-en.ts';
import { matchEn } from '../../../words/match-en.ts';
import { plannerEn } from '../../../words/planner-en.ts';
import { targetsEn } from '../../../words/targets-en.ts';
import { hrefOf } from '../../route.ts';

export interface MachinePage {
  readonly href: string;
  readonly text: string;
}

export const machinePages = (machine: Machine): readonly MachinePage[] => [
  ...adjustPages(machine),
  ...matchPages(machine),
  ...planPage(machine),
  ...cardPage(machine),
];

/** Where to park the carriage, once there is a belt. */
const planPage = ({ id, belts }: Machine): readonly MachinePage[] =>
  belts.length > 0 ? [{ href: hrefOf('machines', id, 'plan'), text: plannerEn.open }] : [];

/** Once there is a target to write on it. */
const cardPage = ({ id, belts }: Machine): readonly MachinePage[] =>
  belts.some(({ targets }) => targets.length > 0) ? [{ href: hrefOf('machines', id, 'card'), text: targetsEn.card.page }] : [];

/** Two belts that must match can be checked without adjusting them. */
const matchPages = ({ id, belts, groups }: Machine): readonly MachinePage[] =>
  groups
    .filter(({ beltIds }) => beltIds.length === 2)
    .map((group) => ({
      href: hrefOf('machines', id, 'match', group.id),
      text: matchEn.page(
        belts
          .filter((belt) => group.beltIds.includes(belt.id))
          .map(({ name }) => name)
          .join(', '),
      ),
    }));

/** Groups that are adjusted together, and each belt that is in none and has a target. */
function adjustPages({ id, belts, groups }: Machine): readonly MachinePage[] {
  const grouped = new Set(groups.flatMap(({ beltIds }) => beltIds));
  const together = groups.map((group) => ({
    id: group.id,
    names: belts.filter((belt) => group.beltIds.includes(belt.id)).map(({ name }) => name),
  }));
  const alone = belts
    .filter((belt) => !grouped.has(belt.id) && belt.targets.length > 0)
    .map((belt) => ({ id: belt.id, names: [belt.name] }));
  return [...together, ...alone].map((one) => ({
    href: hrefOf('machines', id, 'adjust', one.id),
    text: words.adjustNamed(one.names.join(', ')),
  }));
}

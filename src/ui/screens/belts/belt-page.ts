/** What every page of one belt has: the belt as it is kept, and a way to change it. */

import { consume } from '@lit/context';
import { LitElement, type PropertyValues } from 'lit';
import { property, state } from 'lit/decorators.js';
import type { KeptBelt } from '../../../../shared/document/belt.ts';
import { beltsEn } from '../../../words/belts-en.ts';
import { Figures, together } from '../../format.ts';
import { type FoundValues, withBelt, withFound } from '../../state/belt-changes.ts';
import { type Workbench, workbenchContext } from '../../state/context.ts';
import { nowWhen } from '../../state/new-item.ts';

/** Every ± on the page is the half of a 95 % interval. */
export const COVERAGE_FACTOR = 2;

export class BeltPage extends LitElement {
  @consume({ context: workbenchContext }) workbench!: Workbench;
  @property({ attribute: false }) belt!: KeptBelt;
  /** Whether what was found last stands among the belt's values. */
  @state() used = false;
  protected readonly figures = new Figures();

  /** The belt with what was changed here and is still on its way to the store: a field must not fall back while somebody types in it. */
  @state() draft: KeptBelt | undefined;
  #underWay = 0;

  /** As the page shows it. */
  protected get shown(): KeptBelt {
    return this.draft ?? this.belt;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    const isOther = changed.has('belt') && changed.get('belt') !== undefined && changed.get('belt')?.id !== this.belt.id;
    if (isOther || (changed.has('belt') && this.#underWay === 0)) this.draft = undefined;
  }

  protected async change(change: (belt: KeptBelt) => KeptBelt): Promise<boolean> {
    this.used = false;
    this.draft = change(this.shown);
    this.#underWay++;
    try {
      return await this.workbench.kept.change((document) => withBelt(document, this.belt.id, change));
    } finally {
      this.#underWay--;
    }
  }

  protected async use(found: FoundValues): Promise<void> {
    const got = nowWhen();
    await this.change((belt) => withFound(belt, found, got));
    this.used = true;
  }

  /** What is said once the values were taken over; kept readings follow their belt. */
  protected get usedText(): string {
    if (!this.used) return '';
    const count = this.workbench.kept.document.takes.filter(({ entered }) => entered.beltId === this.belt.id).length;
    return count === 0 ? beltsEn.bench.used : beltsEn.bench.usedFor(count);
  }

  /** '8.08 g/m ± 0.08 g/m'. */
  protected density({ value, standardUncertainty }: { value: number; standardUncertainty: number }): string {
    return together(this.figures.measured(value * 1000, COVERAGE_FACTOR * standardUncertainty * 1000), 'g/m');
  }
}

/** The span drawing as each screen shows it, told from the understood setup. */

import { html } from 'lit';
import { en } from '../../words/en.ts';
import type { Figures } from '../format.ts';
import '../parts/span-drawing.ts';
import type { UnderstoodSetup } from '../state/span-setup.ts';
import { spanText } from './setup-words.ts';

export function spanDrawing(
  understood: UnderstoodSetup,
  figures: Figures,
  { variant, ringing = false }: { variant: 'big' | 'small'; ringing?: boolean },
) {
  const { spanLengthM } = understood.setup;
  const length = spanLengthM ? spanText(understood, figures) : '';
  return html`<span-drawing
    .variant=${variant}
    .spanLengthM=${spanLengthM?.value}
    .length=${length}
    .pluckLabel=${variant === 'big' ? en.span.pluckHere : ''}
    .tangentLabel=${variant === 'big' ? en.span.tangentPoint : ''}
    .ringing=${ringing}
    .label=${length ? en.span.label(length) : en.span.labelNoLength}
  ></span-drawing>`;
}

/** The sounds of a take that can be looked at, and what 'What was used' says of one of them. */

import type { Inspection, Trace } from '../../../core/inspection/inspect.ts';
import type { PluckReading, PluckSound } from '../../../core/outcome.ts';
import { formatPercent } from '../../../core/quantity.ts';
import type { SoundClip } from '../../../ports.ts';
import { usedEn } from '../../../words/used-en.ts';
import type { Figures } from '../../format.ts';
import type { DecayLine } from '../../parts/decay-plot.ts';
import type { MarkedFrequency } from '../../parts/spectrogram-plot.ts';
import type { AppState } from '../../state/state.ts';
import type { HeardPluck } from '../../state/take.ts';
import { leftOutTones } from '../spectrum-view.ts';

/** One sound of the take; without `clip` it is no longer kept. */
export interface UsedSound {
  readonly id: string;
  readonly name: string;
  readonly clip?: SoundClip | undefined;
  readonly touchS: number;
  /** As it was read, in the light of the deciding pluck. */
  readonly sound?: PluckSound | undefined;
  readonly pluck?: PluckReading | undefined;
  readonly heard?: HeardPluck | undefined;
  readonly refusal?: string | undefined;
}

/** In the order in which they came, those that were left aside last. */
export function usedSounds({ take, answer }: AppState, figures: Figures): readonly UsedSound[] {
  if (!take) return [];
  const touchOf = (clip: SoundClip | undefined, startS: number): number => startS - (clip?.startS ?? startS);
  return [
    ...take.plucks.map((heard, i): UsedSound => {
      const pluck = answer.plucks[i];
      const sound = pluck?.sound ?? heard.sound;
      return {
        id: `pluck-${i + 1}`,
        name: usedEn.pluck(i + 1),
        clip: heard.clip,
        touchS: touchOf(heard.clip, sound.startS),
        sound,
        pluck,
        heard,
      };
    }),
    ...(take.touched ?? []).map((heard, i): UsedSound => {
      const { clip, sound } = heard;
      return { id: `touched-${i + 1}`, name: usedEn.touched, clip, touchS: touchOf(clip, sound.startS), sound, heard };
    }),
    ...(take.refused ?? []).map(({ why, atS, clip }, i): UsedSound => {
      const name = usedEn.refused(figures.rough(atS, 's'));
      return { id: `aside-${i + 1}`, name, clip, touchS: touchOf(clip, atS), refusal: usedEn.refusal(why) };
    }),
  ];
}

/** Nothing explains all of a sound. */
const MOST_SHOWN = 0.999;

export function usedSentence({ fit }: Inspection, refusal: string | undefined, figures: Figures): string {
  if (!fit) return refusal ?? '';
  const shown = Math.min(fit.explainedShare, MOST_SHOWN);
  const share = formatPercent(shown, { decimals: shown > 0.985 ? 1 : 0, format: figures.format });
  return usedEn.sentence(fit.partials.length, share, figures.whole(1000 * fit.fromS, 'ms'), figures.whole(1000 * fit.toS, 'ms'));
}

/** How far what is left lies below the whole sound, over the stretch that was read. */
export function residualSentence({ fit, whole }: Inspection, figures: Figures): string {
  if (!fit || fit.residual.length === 0) return '';
  const during = whole.filter(({ atS }) => atS >= fit.fromS && atS <= fit.toS);
  const below = meanPowerDb(during) - meanPowerDb(fit.residual);
  return Number.isFinite(below) ? usedEn.residual(figures.whole(below, 'dB')) : '';
}

const meanPowerDb = (trace: Trace): number =>
  10 * Math.log10(trace.reduce((sum, { levelDbfs }) => sum + 10 ** (levelDbfs / 10), 0) / Math.max(1, trace.length));

/** Level of the room before the span was let go; none where nothing was heard of it. */
export function roomDbfs({ whole }: Inspection): number | undefined {
  const before = whole.filter(({ atS }) => atS < -0.03);
  return before.length > 2 ? meanPowerDb(before) : undefined;
}

export const followedPartials = ({ fit }: Inspection, figures: Figures): readonly MarkedFrequency[] =>
  (fit?.partials ?? []).map(({ number, frequencyHz }) => ({ frequencyHz, label: `${number}: ${figures.typed(frequencyHz, 'Hz')}` }));

export const tonesLeftOut = ({ heard }: UsedSound): readonly MarkedFrequency[] => (heard ? leftOutTones(heard) : []);

/** The strongest few: more lines than these cannot be told apart. */
const DRAWN = 4;

export function decayLines({ fit }: Inspection): readonly DecayLine[] {
  if (!fit) return [];
  return fit.partials
    .toSorted((a, b) => b.atTouchDbfs - a.atTouchDbfs)
    .slice(0, DRAWN)
    .map(({ number, atTouchDbfs, decayS, heard }) => ({
      label: usedEn.decay.partial(number),
      heard: heard.filter(({ atS }) => atS >= 0 && atS <= fit.toS),
      fitted: [
        { atS: 0, levelDbfs: atTouchDbfs },
        { atS: fit.toS, levelDbfs: atTouchDbfs - (20 * Math.LOG10E * fit.toS) / decayS },
      ],
    }));
}

export function usedTable({ fit }: Inspection, figures: Figures) {
  return {
    caption: usedEn.table.caption,
    columns: usedEn.table.columns,
    rows: (fit?.partials ?? []).map(({ number, frequencyHz, decayS, atTouchDbfs }) => [
      String(number),
      figures.typed(frequencyHz, 'Hz'),
      figures.rough(decayS, 's'),
      figures.whole(atTouchDbfs, 'dB'),
    ]),
  };
}
